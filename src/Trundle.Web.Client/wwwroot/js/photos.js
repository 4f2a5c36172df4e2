// Photographs of the vehicle: made smaller here, kept on this device until the host has them. A list of its own, beside that of the entries.
// Drawing a picture anew leaves out what the camera wrote beside it: the place, the time, its own name.

const side = 1600, small = 240, most = 1900000;
let opening;

function photos(mode) {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("trundle-photos", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("photos", { keyPath: "id" });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opening.then(d => d.transaction("photos", mode, { durability: "strict" }).objectStore("photos"));
}

function answered(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function drawn(picture, longest) {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

// Takes the picture that was chosen in a control: {"wrong"} or {"kept","preview"}. Where the browser keeps nothing, it is held by this page.
const held = new Map();
export async function takePhoto(control, id, visit) {
  const input = document.getElementById(control);
  const file = input?.files[0];
  if (!file) { return JSON.stringify({ wrong: "none" }); }
  if (file.size > 60e6) { return JSON.stringify({ wrong: "too-large" }); }
  let picture;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return JSON.stringify({ wrong: "not-a-picture" });
  } finally {
    input.value = "";
  }

  const canvas = drawn(picture, side);
  let blob;
  for (const quality of [0.8, 0.6, 0.4]) {
    blob = await new Promise(done => canvas.toBlob(done, "image/jpeg", quality));
    if (blob && blob.size <= most) { break; }
  }

  const photo = { id, visit, blob, preview: drawn(picture, small).toDataURL("image/jpeg", 0.7) };
  picture.close();
  if (!blob || blob.size > most) { return JSON.stringify({ wrong: "too-large" }); }
  let kept = true;
  try {
    await answered((await photos("readwrite")).add(photo));
  } catch {
    kept = false;
    held.set(id, photo);
  }

  return JSON.stringify({ kept, preview: photo.preview });
}

// The photographs not yet sent, without their bytes.
export async function waitingPhotos() {
  let kept = [];
  try {
    kept = await answered((await photos("readonly")).getAll());
  } catch {
    // Then only what this page holds is there.
  }

  return JSON.stringify([...kept, ...held.values()].map(p => ({ id: p.id, visit: p.visit, preview: p.preview })));
}

// Sends one; status 0 where the host was not reached. What the host has, or will never take, leaves the device.
export async function sendPhoto(id, address) {
  try {
    const photo = held.get(id) ?? await answered((await photos("readonly")).get(id));
    if (!photo) { return JSON.stringify({ status: 410, text: "" }); }
    const answer = await fetch(address, { method: "PUT", body: photo.blob, credentials: "same-origin", headers: { "Content-Type": "image/jpeg" } });
    if (answer.ok) { await forgetPhoto(id); }
    return JSON.stringify({ status: answer.status, text: await answer.text() });
  } catch {
    return JSON.stringify({ status: 0, text: "" });
  }
}

// Takes one off this device.
export async function forgetPhoto(id) {
  held.delete(id);
  try {
    await answered((await photos("readwrite")).delete(id));
  } catch {
    // It is sent again, and the host takes it once.
  }
}
