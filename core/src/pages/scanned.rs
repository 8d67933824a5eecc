//! A link as a figure to be scanned.
use super::document::Figure;
use crate::drawing::poster::PAPER;
use crate::share::code::Code;

/// Side of a code on paper, mm, and how small its modules may become before it grows to the second.
const SIDES: [f64; 2] = [48.0, 74.0];
const LEAST_MODULE: f64 = 0.45;

/// The code of a link; none for one that is too long for any.
pub(super) fn scanned(link: &str) -> Option<Figure> {
    let code = Code::of(link)?;
    let side = SIDES[usize::from(SIDES[0] / f64::from(code.side()) < LEAST_MODULE)];
    let px = side * PAPER;
    Some(Figure {
        marks: format!(
            "<rect class=\"code-ground\" width=\"{px:.2}\" height=\"{px:.2}\"/><path class=\"code\" transform=\"scale({:.6})\" d=\"{}\"/>",
            px / f64::from(code.side()),
            code.notation()
        ),
        width: px,
        height: px,
        label: "The link below as a scannable code.".into(),
        caption: "Scan it to open this design, or type the link.".into(),
        true_scale: false,
    })
}
