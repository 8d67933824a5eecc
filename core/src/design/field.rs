//! One input: its name, what it means, where it may lie, and how to read and write it in a [`Design`].
use super::Design;
use crate::quantity::{Kind, Length, Quantity, Ratio};

/// A group of inputs, in the order in which one builds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Group {
    /// How low, how high, on how many stages.
    Lift,
    /// Stock, width, holes and bracing of the arms.
    Arms,
    /// The base frame and the deck.
    Frames,
    /// Screw, nut, bearing and crank.
    Drive,
    /// Wheels, pins and casters.
    Running,
    /// What keeps the deck from giving way sideways.
    Sway,
    /// What stands on the deck, and what pushes it.
    Load,
    /// What the materials and bought parts stand.
    Strength,
    /// The sheet the parts come from.
    Shop,
}

impl Group {
    /// Every group, in reading order.
    pub const ALL: [Self; 9] = [
        Self::Lift,
        Self::Arms,
        Self::Frames,
        Self::Drive,
        Self::Running,
        Self::Sway,
        Self::Load,
        Self::Strength,
        Self::Shop,
    ];

    /// The heading above the group.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Lift => "Lift",
            Self::Arms => "Arms",
            Self::Frames => "Frames and deck",
            Self::Drive => "Drive",
            Self::Running => "Wheels, pins, casters",
            Self::Sway => "Sideways and play",
            Self::Load => "Load",
            Self::Strength => "Strength and limits",
            Self::Shop => "Sheet and shop",
        }
    }
}

/// A value that a design stores as a whole number of steps.
pub trait Stored: Copy {
    /// What kind of value it is, hence how it is read and printed.
    const KIND: Kind;
    /// For choices: every allowed value with its words. Empty for numbers.
    const CHOICES: &'static [(i64, &'static str)];
    /// The value in steps.
    fn to_steps(self) -> i64;
    /// The value of so many steps; a choice that does not exist becomes the first.
    fn of_steps(steps: i64) -> Self;
}

impl<Q: Quantity> Stored for Q {
    const KIND: Kind = Q::KIND;
    const CHOICES: &'static [(i64, &'static str)] = &[];

    fn to_steps(self) -> i64 {
        self.steps()
    }

    fn of_steps(steps: i64) -> Self {
        Q::from_steps(steps)
    }
}

impl Stored for bool {
    const KIND: Kind = Kind::Switch;
    const CHOICES: &'static [(i64, &'static str)] = &[(0, "no"), (1, "yes")];

    fn to_steps(self) -> i64 {
        i64::from(self)
    }

    fn of_steps(steps: i64) -> Self {
        steps != 0
    }
}

/// One input of a design. The list of all of them is [`Design::fields`].
#[derive(Debug)]
pub struct Field {
    /// Two letters that stand for it in links and files, for ever.
    pub key: &'static str,
    /// Where it stands among the inputs.
    pub group: Group,
    /// Its name on the page.
    pub label: &'static str,
    meaning: &'static str,
    /// What kind of value it holds.
    pub kind: Kind,
    /// For choices: value and words.
    pub choices: &'static [(i64, &'static str)],
    /// The value in the metric demo, in steps.
    pub default: i64,
    /// Smallest and largest value ever allowed, in steps; the geometry may allow less.
    pub range: (i64, i64),
    get: fn(&Design) -> i64,
    set: fn(&mut Design, i64),
    shown: fn(&Design) -> bool,
}

impl Field {
    #[expect(clippy::too_many_arguments, reason = "called by the `inputs!` table only, one line an input")]
    pub(super) const fn new(
        key: &'static str,
        group: Group,
        label: &'static str,
        meaning: &'static str,
        kind: Kind,
        choices: &'static [(i64, &'static str)],
        default: i64,
        range: (i64, i64),
        get: fn(&Design) -> i64,
        set: fn(&mut Design, i64),
        shown: fn(&Design) -> bool,
    ) -> Self {
        Self { key, group, label, meaning, kind, choices, default, range, get, set, shown }
    }

    /// What the input means, in a sentence.
    #[must_use]
    pub fn meaning(&self) -> &'static str {
        self.meaning.trim()
    }

    /// Its value in a design, in steps.
    #[must_use]
    pub fn get(&self, design: &Design) -> i64 {
        (self.get)(design)
    }

    /// Writes a value, in steps, without judging it: see [`super::check`].
    pub fn set(&self, design: &mut Design, steps: i64) {
        (self.set)(design, steps);
    }

    /// Whether the input matters for this design (a strut's foot does not while there is no strut).
    #[must_use]
    pub fn shown(&self, design: &Design) -> bool {
        (self.shown)(design)
    }

    /// Whether a value lies in the range, or among the choices.
    #[must_use]
    pub fn allows(&self, steps: i64) -> bool {
        if self.choices.is_empty() {
            (self.range.0..=self.range.1).contains(&steps)
        } else {
            self.choices.iter().any(|(value, _)| *value == steps)
        }
    }

    /// The allowed value nearest to a wanted one, in steps.
    #[must_use]
    pub fn nearest(&self, steps: i64) -> i64 {
        if self.choices.is_empty() {
            steps.clamp(self.range.0, self.range.1)
        } else {
            self.choices
                .iter()
                .map(|(value, _)| *value)
                .min_by_key(|value| value.abs_diff(steps))
                .unwrap_or(self.default)
        }
    }
}

/// Steps in so many millimetres.
pub(super) const fn mm(value: f64) -> i64 {
    Length::mm(value).steps()
}

/// Steps in a ratio.
pub(super) const fn ratio(value: f64) -> i64 {
    Ratio::of(value).steps()
}

/// Declares a group of inputs once: the struct, its defaults and its rows in the table of fields.
macro_rules! inputs {
    ($(#[$meta:meta])* $place:ident: $Group:ident {
        $( $(#[doc = $doc:literal])+ $field:ident: $Type:ty = $default:expr, $from:expr => $to:expr, $key:literal, $label:literal $(, when $when:expr)?; )+
    }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub struct $Group { $( $(#[doc = $doc])+ pub $field: $Type, )+ }

        impl Default for $Group {
            fn default() -> Self {
                Self { $( $field: <$Type as $crate::design::field::Stored>::of_steps($default), )+ }
            }
        }

        pub(super) const FIELDS: &[$crate::design::Field] = &[
            $( $crate::design::Field::new(
                $key,
                $crate::design::Group::$Group,
                $label,
                concat!($($doc),+),
                <$Type as $crate::design::field::Stored>::KIND,
                <$Type as $crate::design::field::Stored>::CHOICES,
                $default,
                ($from, $to),
                |design| $crate::design::field::Stored::to_steps(design.$place.$field),
                |design, steps| design.$place.$field = $crate::design::field::Stored::of_steps(steps),
                $crate::design::field::inputs!(@when $($when)?),
            ), )+
        ];
    };
    (@when) => { |_| true };
    (@when $when:expr) => { $when };
}
pub(super) use inputs;
