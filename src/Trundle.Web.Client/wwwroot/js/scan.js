// Reads a label's code with the camera, where the browser can: it needs a secure address, a camera and BarcodeDetector. Elsewhere the field serves.
// No picture is kept or sent.
const part = document.getElementById("camera");
const says = document.getElementById("camera-says");
const view = document.getElementById("view");

if ("BarcodeDetector" in window && navigator.mediaDevices?.getUserMedia) {
  part.hidden = false;
  document.getElementById("look").addEventListener("click", look);
}

async function look() {
  let seen;
  try {
    const detector = new BarcodeDetector({ formats: ["qr_code"] });
    seen = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    view.srcObject = seen;
    view.hidden = false;
    await view.play();
    says.textContent = "Hold the label before the camera.";
    for (;;) {
      const [code] = await detector.detect(view);
      if (code) {
        document.getElementById("code").value = code.rawValue;
        document.getElementById("scan").requestSubmit();
        return;
      }

      await new Promise(next => requestAnimationFrame(next));
    }
  } catch {
    says.textContent = "The camera cannot be used here. Type the number that stands on the label.";
  } finally {
    seen?.getTracks().forEach(track => track.stop());
  }
}
