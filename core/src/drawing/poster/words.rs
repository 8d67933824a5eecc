//! What is drawn, in a sentence, and at which scale.
use crate::design::{DriveKind, screw_words};
use crate::quantity::{Length, System, figures};
use crate::report::Report;

/// A scale as it stands in a title block; in inches also as so many inches to a foot.
#[must_use]
pub fn ratio_words(ratio: u32, system: System) -> String {
    let inches = match (system, ratio) {
        (System::Inch, 4) => "3",
        (System::Inch, 8) => "1\u{A0}1/2",
        (System::Inch, 12) => "1",
        (System::Inch, 16) => "3/4",
        (System::Inch, 24) => "1/2",
        (System::Inch, 32) => "3/8",
        (System::Inch, 48) => "1/4",
        (System::Inch, 96) => "1/8",
        _ => return format!("1:{ratio}"),
    };
    format!("1:{ratio}, {inches}\u{A0}in = 1\u{A0}ft")
}

/// The table in a sentence: stages, arms, drive.
#[must_use]
pub fn summary(report: &Report, system: System) -> String {
    let design = &report.design;
    let size = |length: Length| figures::laid(length, system).number;
    let stages = match design.lift.stages.get() {
        1 => "One stage".to_owned(),
        2 => "Two stages".to_owned(),
        3 => "Three stages".to_owned(),
        4 => "Four stages".to_owned(),
        more => format!("{more} stages"),
    };
    let place = match design.drive.kind {
        DriveKind::BaseCarriage => "in the base",
        DriveKind::TopCarriage => "under the deck",
        DriveKind::SidePivots => "between the side pivots",
        DriveKind::Strut => "as a strut",
    };
    let unit = if system == System::Metric { "mm" } else { "inches" };
    format!(
        "{stages}, arms {} pin to pin of {} × {} by {}, screw {} {place}; sizes in {unit}.",
        size(design.lift.arm_length),
        design.arms.layers.get(),
        size(design.arms.thickness),
        size(design.arms.width),
        screw_words(design, system),
    )
}
