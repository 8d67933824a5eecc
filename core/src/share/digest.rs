//! A design as one short number, to see whether a link or a file still opens as what it was.
use crate::design::Design;
use crate::quantity::Digest;

/// The digest of a design's name and of every input, by its two letters and its whole steps. A new input changes it only where its value differs from that in the metric
/// demo, which is what old links and files get for it.
#[must_use]
pub fn digest(design: &Design) -> String {
    let name = Digest::default().with(design.name.as_bytes());
    let changed = Design::fields().filter(|field| field.get(design) != field.default);
    changed
        .fold(name, |digest, field| digest.with(format!("\n{} {}", field.key, field.get(design)).as_bytes()))
        .text()
}
