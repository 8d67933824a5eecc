//! What keys mean: on a slider, and anywhere on the page.
use risewright::quantity::{Length, System};

/// Where a key moves a slider.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    /// By one small step, up (1) or down (-1).
    Small(f64),
    /// By one big step, up (1) or down (-1).
    Big(f64),
    /// To the lower end.
    First,
    /// To the upper end.
    Last,
}

impl Step {
    /// The step of a key, by the name that browsers give it; nothing for any other key.
    pub fn of(key: &str) -> Option<Self> {
        Some(match key {
            "ArrowUp" | "ArrowRight" => Self::Small(1.0),
            "ArrowDown" | "ArrowLeft" => Self::Small(-1.0),
            "PageUp" => Self::Big(1.0),
            "PageDown" => Self::Big(-1.0),
            "Home" => Self::First,
            "End" => Self::Last,
            _ => return None,
        })
    }

    /// The value after the step, within the ends. A small step ends on a whole multiple of itself.
    pub fn from(self, value: f64, small: f64, big: f64, ends: (f64, f64)) -> f64 {
        let wanted = match self {
            Self::Small(sign) => next_multiple(value, small, sign),
            Self::Big(sign) => value + sign * big,
            Self::First => ends.0,
            Self::Last => ends.1,
        };
        wanted.max(ends.0).min(ends.1)
    }
}

/// What an arrow key and Page Up move the deck by, m: a millimetre and 50 mm, or a sixteenth and 2 in.
pub const fn height_steps(units: System) -> (f64, f64) {
    match units {
        System::Metric => (Length::mm(1.0).to_m(), Length::mm(50.0).to_m()),
        System::Inch => (Length::inch(0.0625).to_m(), Length::inch(2.0).to_m()),
    }
}

/// The next multiple of `step` beyond `value`. A value closer than a thousandth of a step to a multiple stands on it.
fn next_multiple(value: f64, step: f64, sign: f64) -> f64 {
    const NEAR: f64 = 1e-3;
    let steps = value / step;
    if sign > 0.0 { ((steps + NEAR).floor() + 1.0) * step } else { ((steps - NEAR).ceil() - 1.0) * step }
}

/// What a key with its modifiers does anywhere on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Command {
    /// Take the last change back.
    Undo,
    /// Do it again.
    Redo,
    /// Stop the crank.
    Stop,
    /// Larger type and lines for a classroom, or as before.
    Enlarge,
}

impl Command {
    /// The command of a key; `control` is Control or, on a Mac, Command.
    pub fn of(key: &str, control: bool, shift: bool) -> Option<Self> {
        match (key, control, shift) {
            ("z" | "Z", true, false) => Some(Self::Undo),
            ("z" | "Z", true, true) | ("y" | "Y", true, false) => Some(Self::Redo),
            ("Escape", _, _) => Some(Self::Stop),
            ("F9", false, false) => Some(Self::Enlarge),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ENDS: (f64, f64) = (500.0, 1200.0);

    fn press(key: &str, value: f64) -> Option<f64> {
        Step::of(key).map(|step| step.from(value, 1.0, 50.0, ENDS))
    }

    #[test]
    fn small_steps_land_on_whole_multiples() {
        assert_eq!(press("ArrowUp", 742.3), Some(743.0));
        assert_eq!(press("ArrowDown", 742.3), Some(742.0));
        assert_eq!(press("ArrowUp", 742.999_9), Some(744.0));
        assert_eq!(press("ArrowRight", 742.0), Some(743.0));
    }

    #[test]
    fn big_steps_and_ends_stay_inside() {
        assert_eq!(press("PageUp", 742.3), Some(792.3));
        assert_eq!(press("PageDown", 510.0), Some(500.0));
        assert_eq!(press("Home", 742.3), Some(500.0));
        assert_eq!(press("End", 742.3), Some(1200.0));
        assert_eq!(press("Tab", 742.3), None);
    }

    #[test]
    fn undo_wants_a_modifier() {
        assert_eq!(Command::of("z", false, false), None);
        assert_eq!(Command::of("z", true, false), Some(Command::Undo));
        assert_eq!(Command::of("Z", true, true), Some(Command::Redo));
        assert_eq!(Command::of("Escape", false, false), Some(Command::Stop));
        assert_eq!(Command::of("F9", false, false), Some(Command::Enlarge));
    }
}
