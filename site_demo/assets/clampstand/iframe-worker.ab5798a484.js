(function () {
  "use strict";
  if (location.protocol !== "file:") { return; }

  function FrameWorker(url) {
    var outside = new EventTarget(), frame = document.createElement("iframe"), loaded = add(frame, url);
    outside.postMessage = function (data) {
      loaded.then(function (inside) { inside.dispatchEvent(new MessageEvent("message", { data: data })); });
    };
    outside.terminate = function () { frame.remove(); };
    loaded.then(function (inside) {
      inside.postMessage = function (data) {
        outside.dispatchEvent(new MessageEvent("message", { data: data }));
      };
    });
    return outside;
  }
  function add(frame, url) {
    frame.hidden = true;
    document.body.appendChild(frame);
    var inside = frame.contentWindow;
    inside.document.open();
    inside.document.write("<!doctype html><html><body></body></html>");
    inside.document.close();
    inside.importScripts = function () {
      return Array.prototype.reduce.call(arguments, function (before, address) {
        return before.then(function () { return load(inside, address); });
      }, Promise.resolve());
    };
    return load(inside, url).then(function () { return inside; });
  }

  function load(inside, address) {
    return new Promise(function (done, failed) {
      var script = inside.document.createElement("script");
      script.onload = done;
      script.onerror = failed;
      script.src = address;
      inside.document.body.appendChild(script);
    });
  }

  window.Worker = FrameWorker;
  window.IFrameWorker = FrameWorker; // by this name the theme's search knows that it runs in a frame
})();
