"""Numbers a reader may try: formulae compiled to JavaScript, panels that use them, tables that need none."""
