//! What the bands hang on: every stiffness that enters the frame, from soft to stiff, with its reason.
use super::Sway;
use super::figures::{Banded, GIVE, MULTIPLE};
use crate::mechanics::{Spring, SpringUnit, Springs};
use crate::pages::Reader;
use crate::pages::document::{Block, Cell, Fold, Text};
use crate::quantity::figures::{self, Figure, Guessed};
use crate::quantity::{Amount, System};
use crate::report::{SpringEffect, SpringRun};

/// A stiffness in the reader's units.
pub(super) fn written(unit: SpringUnit, value: f64, system: System) -> Figure {
    let of = match unit {
        SpringUnit::Shift => Guessed::Shift,
        SpringUnit::Turn => Guessed::Turn,
        SpringUnit::Strain => Guessed::Strain,
    };
    figures::guessed(value, of, system)
}

/// From soft to stiff, or the one figure where nothing is guessed.
fn range(spring: &Spring, system: System) -> String {
    let [soft, _, stiff] = spring.values.map(|value| written(spring.unit, value, system));
    if soft.number == stiff.number { stiff.to_string() } else { format!("{} to {stiff}", soft.number) }
}

impl Sway {
    /// Every stiffness of this table.
    pub(super) fn bands(&self, reader: &Reader) -> Vec<Block> {
        if self.known.is_none() {
            return Vec::new();
        }
        let system = reader.system;
        let springs = Springs::of(&self.report.design);
        let effects = self.springs.as_ref().map(SpringRun::effects).unwrap_or_default();
        let alone = |spring: &Spring| {
            let effect = effects.iter().find(|effect| effect.spring.title == spring.title)?;
            self.alone(effect, system)
        };
        let list = springs.shown().map(|spring| fold(spring, alone(spring), system)).collect();
        vec![
            Block::heading("What the bands hang on"),
            Block::note(
                "Wood, steel and sizes are known well enough. How a bolt sits in its hole, a board in its housing and a washer on its rail is not: no handbook has it, and no test of a built table stands behind these values. Soft takes all of them soft at once, stiff all of them stiff; the truth of a table lies between.",
            ),
            Block::Group("sway-springs", list),
        ]
    }
}

impl Sway {
    /// What a stiffness does by itself to give and critical load, each where it is worst.
    fn alone(&self, effect: &SpringEffect, system: System) -> Option<String> {
        let sway = self.known.as_ref()?;
        let ends = |figure: &Banded| -> Option<[f64; 2]> {
            let station = figure.worst(sway)?;
            let place = self.looked.iter().position(|looked| *looked == station)?;
            Some([(figure.value)(effect.soft.get(place)?)?, (figure.value)(effect.stiff.get(place)?)?])
        };
        let [soft, stiff] = ends(&GIVE)?;
        let mut text = format!(
            "Varied alone from stiff to soft, the deck gives {}",
            Amount::GiveRange(stiff, soft).text(system)
        );
        if let Some([soft, stiff]) = ends(&MULTIPLE) {
            let [soft, stiff] = [soft, stiff].map(|value| figures::factor(value).number);
            text += &if soft == stiff {
                format!("; the critical load stays {stiff} times the load")
            } else {
                format!(" and the critical load falls from {stiff} to {soft} times the load")
            };
        }
        Some(text + ", each where it is worst.")
    }
}

fn fold(spring: &Spring, alone: Option<String>, system: System) -> Block {
    let [_, middle, _] = spring.values;
    let guessed = spring.values[0] < spring.values[2];
    let best = if guessed {
        format!("best guess {}", written(spring.unit, middle, system))
    } else {
        "one value".to_owned()
    };
    let mut blocks = vec![Block::text(spring.reason)];
    blocks.extend(alone.map(Block::text));
    Block::Fold(Fold {
        id: format!("spring-{}", id(spring.title)),
        line: vec![
            Cell::Words(Text::default().strong(spring.title)),
            Cell::StrongNumber(range(spring, system)),
            Cell::number(best),
        ],
        blocks,
        open: false,
    })
}

/// A title as a name: small letters, digits and hyphens.
fn id(title: &str) -> String {
    let signs: String = title
        .chars()
        .map(|sign| if sign.is_ascii_alphanumeric() { sign.to_ascii_lowercase() } else { ' ' })
        .collect();
    signs.split_whitespace().collect::<Vec<_>>().join("-")
}
