// Runs before anything is painted: whoever comes with a link, or has a design kept here, must not see another design first.
const kept = () => {
  try {
    return Object.keys(localStorage).some((key) => key.startsWith("risewright.design."));
  } catch {
    return false;
  }
};
if (location.hash.length > 1 || kept()) document.documentElement.classList.add("other");
