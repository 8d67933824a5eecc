//! Joining the pieces into ladders, base, axles and deck.
use super::{Bench, CROSS_BARS, DIAGONALS, Step, Task, on_base, on_deck, say, screws, size, step};
use crate::mechanics::Fault;
use crate::parts::{STOP_SCREWS, arm_spread, fastenings, has_tube, rail_middle};
use crate::quantity::{Amount, Length};

/// What the wheels run on.
const STRIPS: [&str; 2] = ["Wheel strip", "Strip screw"];

/// Bolts of the pivot cheeks with what goes on them.
const CHEEK_BOLTS: [&str; 3] = ["Cheek bolt", "Cheek nut", "Cheek washer"];

impl Bench<'_> {
    /// The arms of one name with their boards: a ladder each.
    pub(super) fn ladders(&self) -> Option<Step> {
        let (boards, straps) = (self.count("Cross board"), self.count("Strap"));
        if boards + straps == 0 {
            return None;
        }
        let long = self.design.lift.arm_length.to_m();
        let diagonal = |b: bool| Amount::Ruled(libm::hypot(long, arm_spread(self.design, b).to_m()));
        let braced = [(self.design.arms.boards_a, false, "A"), (self.design.arms.boards_b, true, "B")];
        let tests = braced
            .into_iter()
            .filter(|(has, ..)| *has)
            .map(|(_, b, name)| {
                say(format!("Arms {name}: from the lower left pin to the upper right one "))
                    .with(diagonal(b))
                    .and(", and the other diagonal the same within ")
                    .with(Amount::Within(DIAGONALS))
                    .and(".")
            })
            .chain([say("Lying on a flat bed, no arm lifts off: the ladder has no twist.")])
            .collect();
        let mut work = Vec::new();
        if boards > 0 {
            work.push(say(format!(
                "Dry fit {boards} cross boards between their arms, then glue and screw them, two screws an end, with bolts through the pivot holes to hold the arms in line."
            )));
        }
        if straps > 0 {
            work.push(say(format!(
                "Bolt {straps} straps crosswise from board to board, tight, while the diagonals are equal."
            )));
        }
        let names = ["Cross board", "Board screw", "Strap", "Strap bolt", "Strap nut", "Strap washer"];
        Some(step(Task::Ladders, "Join left and right arms into ladders", self.named(&names), work, tests))
    }

    pub(super) fn base(&self) -> Step {
        let (running, design) = (&self.design.running, self.design);
        let apart = (running.caster_right - running.caster_left).to_m();
        let across = 2.0 * rail_middle(design).to_m();
        let names = ["Base beam", "Base plank", "Base pivot cheek", "Inner base cheek"];
        let parts = self.fitted(|part| {
            let shared = part.name == "Cheek packer" || CHEEK_BOLTS.contains(&part.name);
            names.contains(&part.name) || shared && on_base(part)
        });
        step(
            Task::Base,
            "Base frame",
            parts,
            vec![
                say(
                    "Cut the halvings, dry fit beams, planks and pivot cheeks upside down on a flat bed, then glue and bolt them.",
                ),
                say("Beams ")
                    .with(Amount::Ruled(across))
                    .and(" apart, middle to middle; planks ")
                    .with(Amount::Ruled(apart))
                    .and("."),
                say(
                    "A bolt right through both cheeks’ pivot holes, or a straight bar, keeps them in line while the glue sets.",
                ),
            ],
            vec![
                say("Diagonals between the crossings ")
                    .with(Amount::Ruled(libm::hypot(apart, across)))
                    .and(", both the same within ")
                    .with(Amount::Within(DIAGONALS))
                    .and("."),
                say("A straight bar through both pivot holes lies square to the beams."),
            ],
        )
    }

    pub(super) fn rails(&self) -> Result<Step, Fault> {
        let (low, high) = (self.carriage(self.design.lift.lowest)?, self.carriage(self.design.lift.highest)?);
        let radius = self.design.running.wheel.to_m() / 2.0;
        Ok(Step {
            caution: "Without its end stops the carriage can leave its rail, and the table falls.",
            ..step(
                Task::Rails,
                "Wheel strips and end stops",
                self.fitted(|part| part.name == "End stop" || on_base(part) && STRIPS.contains(&part.name)),
                vec![
                    say(
                        "Screw the strips on the base beams, flush with their inner faces, heads below the surface.",
                    ),
                    say("End stops on the base beams: faces ")
                        .with(Amount::Ruled(low + radius))
                        .and(" and ")
                        .with(Amount::Ruled((high - radius).max(0.0)))
                        .and(" from the pivots, where the wheel stands at the lowest and the highest deck. Glue each to its beam, and drive ")
                        .then(screws("Stop screw", STOP_SCREWS, fastenings(self.design, self.parts)))
                        .and(" from above right through it into the beam, in holes it passes freely."),
                ],
                vec![say("A bearing rolled by hand from stop to stop meets no screw head and no step.")],
            )
        })
    }

    fn carriage(&self, deck: Length) -> Result<f64, Fault> {
        Ok(self.solver.pose_at_height(deck.to_m())?.carriage_x)
    }

    pub(super) fn casters(&self) -> Step {
        let running = &self.design.running;
        step(
            Task::Casters,
            "Casters",
            self.named(&["Caster", "Caster screw"]),
            vec![
                say("Screw the casters under planks and beams, ")
                    .with(size(running.caster_across))
                    .and(" off the middle, plates flat on the wood."),
            ],
            vec![
                say("All four wheels touch a flat floor; the frame does not rock."),
                say("Pivot holes ")
                    .with(size(self.design.lift.pin_line))
                    .and(" above the floor on both sides."),
            ],
        )
    }

    pub(super) fn axles(&self) -> Step {
        let running = &self.design.running;
        let between = (running.wheel_place * 2).to_m();
        let names = ["Wheel axle", "Half axle", "Wheel", "Flange washer", "Collar"];
        let tubes = has_tube(self.design);
        let parts =
            self.fitted(|part| names.contains(&part.name) || tubes && CROSS_BARS.contains(&part.name));
        let work = if tubes {
            "Drive the plugs into the tubes, slide the axles through and drill tube, plug and axle together for a spring pin at every plug; arms, flange washers and wheels follow when the scissors are put together."
        } else {
            "Cut the axles to length and break their edges; arms, flange washers and wheels follow when the scissors are put together."
        };
        step(
            Task::Axles,
            "Wheel axles",
            parts,
            vec![say(work)],
            vec![
                say("Wheel to wheel ")
                    .with(Amount::Ruled(between))
                    .and(", middle to middle, the same at both axles."),
                say("The axle rolled on a flat bed does not wobble."),
            ],
        )
    }

    pub(super) fn deck(&self) -> Step {
        let frames = &self.design.frames;
        let across = 2.0 * rail_middle(self.design).to_m();
        let long = frames.deck_rail_length.to_m();
        let names = ["Deck", "Deck rail", "Deck pivot cheek", "Inner deck cheek", "Deck screw", "Wear sheet"];
        let parts = self.fitted(|part| {
            let shared = part.name == "Cheek packer"
                || CHEEK_BOLTS.contains(&part.name)
                || STRIPS.contains(&part.name);
            names.contains(&part.name) || shared && on_deck(part)
        });
        step(
            Task::Deck,
            "Deck with its rails",
            parts,
            vec![
                say("Mark the rails’ middles ").with(Amount::Ruled(across)).and(" apart under the deck, glue and screw them; cheeks beside them with a straight bar through both pivot holes."),
                say("Screw the strips under the rails, flush with their inner faces, heads below the surface."),
            ],
            vec![
                say("Diagonals of the rails’ ends ").with(Amount::Ruled(libm::hypot(long, across))).and(", both the same within ").with(Amount::Within(DIAGONALS)).and("."),
                say("The base wheels’ axle laid in the deck rails rolls from end to end without binding."),
            ],
        )
    }
}
