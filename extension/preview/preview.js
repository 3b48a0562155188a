// The page inside the preview: follows the cursor of the editor, and leads the editor to a layer that is clicked.
const editor = acquireVsCodeApi();
const page = document.getElementById('page');
let layer = '';

function mark() {
  for (const element of page.querySelectorAll('[data-layer]'))
    element.classList.toggle('current', element.dataset.layer === layer);
}

page.addEventListener('click', (event) => {
  const found = event.target.closest('[data-layer]');
  if (found) editor.postMessage({ reveal: found.dataset.layer });
});

window.addEventListener('message', ({ data }) => {
  if (data.body !== undefined) {
    const place = window.scrollY;
    // the server escapes every word of the plan; the policy of this page forbids scripts but this one
    page.innerHTML = data.body;
    window.scrollTo(0, place);
    editor.setState({ uri: data.uri });
  }
  if (data.layer !== undefined) {
    layer = data.layer;
    mark();
    const first = page.querySelector('td[data-layer].current, th[data-layer].current');
    if (data.follow && first) first.scrollIntoView({ block: 'nearest' });
  } else mark();
});

editor.postMessage({ ready: true });
