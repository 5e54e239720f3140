// Runs before the app, in any browser of the last fifteen years: plain old syntax on purpose.
// Shows #nowasm when the app cannot start here, so that nobody waits at an empty frame.
(function () {
  // A weak signal needs time for the first load; by then the text (it says so) helps more than the frame.
  var PATIENCE_MS = 12000;
  var started = false;

  function show(yes) {
    var note = document.getElementById("nowasm");
    if (note) note.hidden = !yes;
  }
  function give_up() {
    if (!started) show(true);
  }

  window.addEventListener("TrunkApplicationStarted", function () {
    started = true;
    show(false);
  });
  window.addEventListener("error", give_up);
  window.addEventListener("unhandledrejection", give_up);
  window.setTimeout(give_up, typeof WebAssembly === "object" ? PATIENCE_MS : 0);
})();
