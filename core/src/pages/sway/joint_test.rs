//! How a builder measures a joint, and what the measurement should show.
use super::Sway;
use super::band::written;
use crate::drawing;
use crate::mechanics::{GRAVITY, Springs, joint_test, test_is_void};
use crate::pages::Reader;
use crate::pages::document::{Block, Cell, Figure, Fold, Table, Text};
use crate::quantity::{Amount, System, figures};

/// Pulls for which the expected give is told, N.
const PULLS: [f64; 3] = [25.0, 50.0, 100.0];

impl Sway {
    /// The test, step by step.
    pub(super) fn joint_test(&self, reader: &Reader) -> Vec<Block> {
        if self.known.is_none() {
            return Vec::new();
        }
        let (system, design) = (reader.system, &self.report.design);
        let reach = design.sway.test_reach.to_m();
        let size = |metres: f64| Amount::Size(metres).text(system);
        let steps = [
            "Take two offcuts as thick as your arms, one of them long, and join them as your table will be joined: same bushings, same bolt, same washers, nut no tighter.".into(),
            "Clamp one flat on the bench, so near the bolt that it cannot bend. The other lies over it and stands out beyond the bench.".into(),
            format!("Hook the luggage scale to the long one, {} from the bolt. Stand a ruler beside the hook.", size(reach)),
            "Pull square to its face until the free play is taken up and read scale and ruler. Pull on to about ten times that and read both again.".into(),
            "Enter three figures under Sideways and play. Joint test, pull: by how much the scale shows more. Reach: from the bolt to the hook. Gives: by how much the ruler shows more. Kilograms on a scale times 9.81 are newtons; pounds are pounds of force.".into(),
            "Do it three times, towards either side, and take the mean. Do it again after some weeks of use: joints wear.".into(),
        ];
        vec![
            Block::heading("Measure a joint of your own"),
            Block::text(standing(self, system)),
            Block::Fold(Fold {
                id: "joint-test".into(),
                line: vec![Cell::words("How to measure it with a luggage scale and a ruler")],
                blocks: vec![
                    Block::Figure(figure(&size(reach))),
                    Block::Steps(steps.into_iter().map(|step: String| vec![Block::text(step)]).collect()),
                    Block::Table(self.expected(reach, system)),
                ],
                open: false,
            }),
        ]
    }

    /// What the ruler should show.
    fn expected(&self, reach: f64, system: System) -> Table {
        let give = |metres: f64| figures::sag(metres, system).number;
        let rows = PULLS.map(|pull| {
            let [soft, middle, stiff] = joint_test(&self.report.design, pull, reach);
            vec![
                Cell::number(Amount::Force(pull).text(system)),
                Cell::number(Amount::Mass(pull / GRAVITY).text(system)),
                Cell::number(give(stiff)),
                Cell::StrongNumber(give(middle)),
                Cell::number(give(soft)),
            ]
        });
        let unit = figures::sag(0.0, system).unit;
        Table {
            caption: format!(
                "What the ruler should show in {unit}, {} from the bolt, if the guesses hold; the arm's own bending is in it",
                Amount::Size(reach).text(system)
            ),
            head: ["pull", "on the scale", "stiff", "best guess", "soft"].map(String::from).into(),
            rows: rows.into(),
            foot: Vec::new(),
        }
    }
}

/// Whether a joint was measured, and what that does.
fn standing(page: &Sway, system: System) -> Text {
    let design = &page.report.design;
    let sway = &design.sway;
    let rock = Springs::of(design).rock;
    let [soft, middle, stiff] = rock.values.map(|value| written(rock.unit, value, system));
    if sway.test_pull.steps() == 0 {
        return Text::default()
            .words(format!(
                "The rocking of a bolt in its holes is the guess that matters most, and you can measure it: it is taken as {} to {}, best guess {}. A measured joint takes the place of the guess and narrows every band.",
                soft.number, stiff, middle,
            ));
    }
    if test_is_void(design) {
        return Text::from(
            "The joint test that is entered cannot be right: the arm alone would bend as far. It is not used, and the guess stands.",
        );
    }
    Text::from(format!(
        "Your joint: {} at {} from the bolt gave {}. Its rocking is {}; that figure is used for all pivots, soft to stiff.",
        Amount::Force(sway.test_pull.to_n()).text(system),
        Amount::Size(sway.test_reach.to_m()).text(system),
        Amount::Give(sway.test_give.to_m()).text(system),
        middle,
    ))
}

fn figure(reach: &str) -> Figure {
    let marks = drawing::joint_test::joint_test(reach);
    let [width, height] = drawing::joint_test::SIZE;
    Figure {
        marks: marks.iter().map(drawing::Mark::svg).collect(),
        width,
        height,
        label: format!(
            "Two arms on one bolt, seen on edge. The lower is clamped to a bench. The upper stands out over the edge; {reach} from the bolt a luggage scale pulls it up, and a ruler shows how far it rises."
        ),
        caption: Text::default(),
        true_scale: false,
    }
}
