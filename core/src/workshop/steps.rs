//! In what order to build: numbered steps with this design's own sizes and counts, what to measure before going on, and where care is due.
use super::sheets::{Job, jobs};
use crate::design::{Design, DriveKind};
use crate::mechanics::{Detail, Fault, Solver};
use crate::parts::{Form, Part, arm_spread, arm_thickness, frame_thickness, rail_middle};
use crate::quantity::{Amount, Length, Phrase};

/// One step of the build.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What is made, in a few words.
    pub title: &'static str,
    /// What to do, sentence by sentence.
    pub work: Vec<Phrase>,
    /// What must be found before going on, each with its figure.
    pub tests: Vec<Phrase>,
    /// Where care is due; empty where no more than usual.
    pub caution: &'static str,
    /// Numbers of the parts that come in.
    pub parts: Vec<u32>,
}

/// Test load as a share of the load (common practice for lifting gear, no source).
const PROOF: f64 = 1.25;

/// How much two diagonals may differ: half a millimetre a side is what a square and a pencil reach (common practice, no source).
const DIAGONALS: f64 = 1e-3;

/// How much out of level is looked for, as a slope: a two-metre level shows it (common practice, no source).
const LEVEL: f64 = 0.002;

/// What the steps are told from.
struct Bench<'a> {
    design: &'a Design,
    parts: &'a [Part],
    solver: &'a Solver,
}

/// The steps of a design in order, from its parts and its solver.
///
/// # Errors
/// Where the deck cannot stand at its lowest or its highest.
pub fn steps(design: &Design, parts: &[Part], solver: &Solver) -> Result<Vec<Step>, Fault> {
    let bench = Bench { design, parts, solver };
    let mut list = vec![
        bench.stock(),
        bench.sawing(),
        bench.gluing(),
        bench.shaping(),
        bench.drilling(),
        bench.bushings(),
    ];
    list.extend(bench.ladders());
    list.extend([bench.base(), bench.rails()?, bench.casters(), bench.carriages(), bench.deck()]);
    list.extend([
        bench.scissors(),
        bench.onto_base(),
        bench.screw()?,
        bench.deck_on()?,
        bench.props(),
        bench.proof()?,
    ]);
    Ok(list)
}

fn size(length: Length) -> Amount {
    Amount::Size(length.to_m())
}

fn say(words: impl Into<String>) -> Phrase {
    Phrase::new(words)
}

impl Bench<'_> {
    fn count(&self, name: &str) -> u32 {
        self.parts.iter().filter(|part| part.name == name).map(|part| part.count).sum()
    }

    fn numbers(&self, names: &[&str]) -> Vec<u32> {
        let mut list: Vec<u32> =
            self.parts.iter().filter(|part| names.contains(&part.name)).map(|part| part.number).collect();
        list.sort_unstable();
        list.dedup();
        list
    }

    fn step(&self, title: &'static str, names: &[&str], work: Vec<Phrase>, tests: Vec<Phrase>) -> Step {
        Step { title, work, tests, caution: "", parts: self.numbers(names) }
    }

    fn stock(&self) -> Step {
        let thick = self.design.arms.thickness;
        self.step(
            "Measure the sheet",
            &[],
            vec![say("Measure the sheet's thickness with a caliper at its four edges, and enter the mean here before anything is cut.")],
            vec![say("Thickness within 0.3 mm of ").with(Amount::Give(thick.to_m())).and("; else every housing and every bolt changes.")],
        )
    }

    fn sawing(&self) -> Step {
        let jobs: Vec<Job> = jobs(self.design, self.parts);
        let pieces: usize = jobs.iter().map(|job| job.pieces.len()).sum();
        let area: f64 = jobs.iter().map(Job::area).sum();
        self.step(
            "Cut the pieces",
            &[],
            vec![
                say(format!("Cut {pieces} pieces, "))
                    .with(Amount::Area(area))
                    .and(" in all, in the order of the sheet layout, the saw's kerf at ")
                    .with(Amount::Give(self.design.shop.kerf.to_m()))
                    .and("."),
                say("Write its number on every piece, and an arrow along the grain."),
            ],
            vec![
                say(format!("{pieces} pieces on the bench, arms of one length all equal within "))
                    .with(Amount::Give(DIAGONALS))
                    .and("."),
            ],
        )
    }

    fn gluing(&self) -> Step {
        let layered: Vec<&Part> =
            self.parts.iter().filter(|part| part.form == Form::Sheet && part.layers > 1).collect();
        let count: u32 = layered.iter().map(|part| part.count).sum();
        let mut numbers: Vec<u32> = layered.iter().map(|part| part.number).collect();
        numbers.sort_unstable();
        numbers.dedup();
        Step {
            parts: numbers,
            ..self.step(
                "Glue up the layers",
                &[],
                vec![
                    say(format!("Glue {count} pieces from their layers, datum edges flush, clamped on a flat bed between two straight cauls.")),
                    say("Leave them overnight before they are drilled."),
                ],
                vec![
                    say("Arms ").with(size(arm_thickness(self.design))).and(" thick, frames ").with(size(frame_thickness(self.design))).and(", no light under a straightedge along any arm."),
                ],
            )
        }
    }

    fn shaping(&self) -> Step {
        let arms = &self.design.arms;
        self.step(
            "Trim the arms and round their ends",
            &["Arm A", "Arm B"],
            vec![
                say("Trim all arms to ").with(size(arms.width)).and(" at one fence setting."),
                say("Round their ends to ")
                    .with(size(arms.end.min(Length::from_steps(arms.width.steps() / 2))))
                    .and(" radius: the corners would sweep into base and deck."),
            ],
            vec![say("All arms side by side on edge: no step to be felt.")],
        )
    }

    fn drilling(&self) -> Step {
        self.step(
            "Drill the arms",
            &["Arm A", "Arm B"],
            vec![say("Drill the pivot holes in the order of the drilling sheet: pinned at the centre, in pairs, turned end for end.")],
            vec![
                say("Dry fit: all arms of one length stacked on three bolts go together by hand, in every order, and turned end for end."),
                say("Pin to pin ").with(size(self.design.lift.arm_length)).and(" on every arm."),
            ],
        )
    }

    fn bushings(&self) -> Step {
        let count = self.count("Bushing") + self.count("Axle bushing");
        if count == 0 {
            return self.step(
                "Seal the holes",
                &[],
                vec![say("Soak the bores with thin epoxy and ream them when it is hard: the bolts turn in the wood itself.")],
                vec![say("Every bolt turns by hand and does not rattle.")],
            );
        }
        self.step(
            "Press in the bushings",
            &["Bushing", "Axle bushing"],
            vec![
                say(format!("Cut {count} bushings from tube, square and free of burrs, and press them in with a film of epoxy, flush on both faces.")),
            ],
            vec![
                say("Every bolt turns in its bushing by hand; its play is about ").with(Amount::Give(self.design.running.clearance.to_m())).and("."),
            ],
        )
    }

    /// The arms of one name with their boards: a ladder each.
    fn ladders(&self) -> Option<Step> {
        let boards = self.count("Cross board");
        if boards == 0 {
            return None;
        }
        let long = self.design.lift.arm_length.to_m();
        let diagonal = |b: bool| Amount::Size(libm::hypot(long, arm_spread(self.design, b).to_m()));
        let braced = [(self.design.arms.boards_a, false, "A"), (self.design.arms.boards_b, true, "B")];
        let tests = braced
            .into_iter()
            .filter(|(has, ..)| *has)
            .map(|(_, b, name)| {
                say(format!("Arms {name}: from the lower left pin to the upper right one "))
                    .with(diagonal(b))
                    .and(", and the other diagonal the same within ")
                    .with(Amount::Give(DIAGONALS))
                    .and(".")
            })
            .chain([say("Lying on a flat bed, no arm lifts off: the ladder has no twist.")])
            .collect();
        let mut work = vec![say(format!(
            "Dry fit {boards} cross boards between their arms, then glue and screw them, two screws an end, with bolts through the pivot holes to hold the arms in line."
        ))];
        if self.count("Strap") > 0 {
            work.push(say(format!(
                "Bolt {} straps crosswise from board to board, tight, while the diagonals are equal.",
                self.count("Strap")
            )));
        }
        Some(self.step(
            "Join arms of one name into ladders",
            &["Cross board", "Board screw", "Strap", "Strap bolt"],
            work,
            tests,
        ))
    }

    fn base(&self) -> Step {
        let (running, design) = (&self.design.running, self.design);
        let apart = (running.caster_right - running.caster_left).to_m();
        let across = 2.0 * rail_middle(design).to_m();
        self.step(
            "Base frame",
            &["Base beam", "Base plank", "Base pivot cheek", "Inner base cheek", "Cheek packer", "Cheek bolt"],
            vec![
                say("Cut the halvings, dry fit beams, planks and pivot cheeks upside down on a flat bed, then glue and bolt them."),
                say("Beams ").with(Amount::Size(across)).and(" apart, middle to middle; planks ").with(Amount::Size(apart)).and("."),
                say("A bolt right through both cheeks' pivot holes, or a straight bar, keeps them in line while the glue sets."),
            ],
            vec![
                say("Diagonals between the crossings ").with(Amount::Size(libm::hypot(apart, across))).and(", both the same within ").with(Amount::Give(DIAGONALS)).and("."),
                say("A straight bar through both pivot holes lies square to the beams."),
            ],
        )
    }

    fn rails(&self) -> Result<Step, Fault> {
        let (low, high) = (self.carriage(self.design.lift.lowest)?, self.carriage(self.design.lift.highest)?);
        let radius = self.design.running.wheel.to_m() / 2.0;
        Ok(Step {
            caution: "Without its end stops the carriage can leave its rail, and the table falls.",
            ..self.step(
                "Wheel strips and end stops",
                &["Wheel strip", "Strip screw", "End stop"],
                vec![
                    say("Screw the strips on the rails, flush with their inner faces, heads below the surface."),
                    say("End stops on the base beams: faces ").with(Amount::Size(low + radius)).and(" and ").with(Amount::Size((high - radius).max(0.0))).and(" from the pivots, where the wheel stands at the lowest and the highest deck."),
                ],
                vec![say("A bearing rolled by hand from stop to stop meets no screw head and no step.")],
            )
        })
    }

    fn carriage(&self, deck: Length) -> Result<f64, Fault> {
        Ok(self.solver.pose_at_height(deck.to_m())?.carriage_x)
    }

    fn casters(&self) -> Step {
        let running = &self.design.running;
        self.step(
            "Casters",
            &["Caster", "Caster screw"],
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

    fn carriages(&self) -> Step {
        let running = &self.design.running;
        let between = (running.wheel_place * 2).to_m();
        self.step(
            "Wheel axles",
            &["Wheel axle", "Half axle", "Cross-bar", "Tube plug", "Wheel", "Flange washer", "Collar"],
            vec![
                say("Drive the plugs into the tubes, slide the axles through and pin them; arms, flange washers and wheels follow when the scissors are put together."),
            ],
            vec![
                say("Wheel to wheel ").with(Amount::Size(between)).and(", middle to middle, the same at both axles."),
                say("The axle rolled on a flat bed does not wobble."),
            ],
        )
    }

    fn deck(&self) -> Step {
        let frames = &self.design.frames;
        let across = 2.0 * rail_middle(self.design).to_m();
        let long = frames.deck_rail_length.to_m();
        self.step(
            "Deck with its rails",
            &["Deck", "Deck rail", "Deck pivot cheek", "Inner deck cheek", "Deck screw", "Wear sheet"],
            vec![
                say("Mark the rails' middles ").with(Amount::Size(across)).and(" apart under the deck, glue and screw them; cheeks beside them with a straight bar through both pivot holes."),
            ],
            vec![
                say("Diagonals of the rails' ends ").with(Amount::Size(libm::hypot(long, across))).and(", both the same within ").with(Amount::Give(DIAGONALS)).and("."),
                say("The base wheels' axle laid in the deck rails rolls from end to end without binding."),
            ],
        )
    }

    fn scissors(&self) -> Step {
        let stages = self.design.lift.stages.get();
        Step {
            caution: "From here on arms can close on fingers: two people, and a block between the arms whenever hands are near.",
            ..self.step(
                "Put the scissors together",
                &["Pivot bolt", "Pivot nut", "Pivot washer", "Spacer washer", "Plastic disc"],
                vec![
                    say(format!("On its side on the floor: join the ladders of {stages} stage{} at their centres, then stage to stage, grease in every bushing.", if stages == 1 { "" } else { "s" })),
                    say("Run up each locking nut until the joint is free of play along the bolt and still falls by its own weight."),
                ],
                vec![say("Dry fit: opened and folded by hand over the whole lift, nothing rubs but the washers.")],
            )
        }
    }

    fn onto_base(&self) -> Step {
        let running = &self.design.running;
        self.step(
            "Scissors onto the base",
            &["Keeper", "Keeper screw"],
            vec![
                say("Bolt the lower arms A to the base pivots, set the base wheels on their strips, and screw the keepers over them."),
            ],
            vec![
                say("Slack under the keepers ").with(Amount::Give(running.rail_gap.to_m())).and(" all along."),
                say("The carriage rolls from stop to stop with one hand."),
            ],
        )
    }

    fn screw(&self) -> Result<Step, Fault> {
        let drive = &self.design.drive;
        let detail = |deck: Length| -> Result<f64, Fault> {
            let pose = self.solver.pose_at_height(deck.to_m())?;
            Ok(self.solver.state(&pose, Detail::FORCES)?.screw_length)
        };
        let travel = (detail(self.design.lift.highest)? - detail(self.design.lift.lowest)?).abs();
        let turns = travel / drive.lead.to_m();
        let place = if matches!(drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage) {
            say("Bearing tube with its middle ")
                .with(size(drive.bearing_place))
                .and(" from the fixed pivots.")
        } else {
            say("Hang the screw between its two points.")
        };
        Ok(Step {
            caution: "A nut that strips drops the table: fit a second, captured nut a few turns behind the first.",
            ..self.step(
                "Screw, nut and crank",
                &["Screw", "Nut", "Nut flange bolt", "Bearing tube", "Thrust bearing", "Screw collar", "Crank"],
                vec![place, say("Let nut and bearing find their line before their bolts are tight: turn the screw through its whole travel, then tighten.")],
                vec![
                    say("From stop to stop ").with(Amount::Turns(turns)).and(", ").with(Amount::Size(travel)).and(" of travel, the crank as light at the end as at the beginning."),
                ],
            )
        })
    }

    fn deck_on(&self) -> Result<Step, Fault> {
        let lift = &self.design.lift;
        let tilt = |deck: Length| Ok::<f64, Fault>(self.solver.pose_at_height(deck.to_m())?.phi);
        let (low, high) = (tilt(lift.lowest)?, tilt(lift.highest)?);
        let level = |name: &str, deck: Length, tilt: f64| {
            say(format!("At the {name} deck: "))
                .with(size(deck))
                .and(" above the floor at the fixed pivots, ")
                .then(if tilt.abs() < LEVEL {
                    say("level both ways within 2 mm a metre.")
                } else {
                    say("tilted by ").with(Amount::Angle(tilt)).and(" along, level across.")
                })
        };
        Ok(self.step(
            "Deck onto the scissors",
            &["Deck"],
            vec![say("Bolt the deck's pivots to the upper arms B, set its rails on the deck wheels, and screw the keepers beneath them.")],
            vec![level("lowest", lift.lowest, low), level("highest", lift.highest, high)],
        ))
    }

    fn props(&self) -> Step {
        let length =
            self.parts.iter().find(|part| part.name == "Prop").map_or(Length::ZERO, |part| part.size[0]);
        Step {
            caution: "Never reach in or lie beneath a raised table that stands on its screw alone.",
            ..self.step(
                "Props",
                &["Prop"],
                vec![
                    say(format!("Cut {} props ", self.count("Prop"))).with(size(length)).and(" long, cleats at both ends to keep them on beam and rail; raise the deck fully, set them, and lower until they carry."),
                ],
                vec![say("Both props carry, neither can be knocked out by hand.")],
            )
        }
    }

    fn proof(&self) -> Result<Step, Fault> {
        let (design, lift) = (self.design, &self.design.lift);
        let pose = self.solver.pose_at_height(lift.lowest.to_m())?;
        let state = self.solver.state(&pose, Detail { deflection: true, ..Detail::FORCES })?;
        let sag = state.deflection.map_or(0.0, |deflection| deflection.drop.total());
        let load = Amount::Mass(PROOF * design.load.mass.to_kg());
        Ok(Step {
            caution: "Stand clear of the table's ends and keep hands off the deck. Never lift people. Chock the casters.",
            ..self.step(
                "Load test, low down",
                &[],
                vec![
                    say("At the lowest deck, load 125 %: ").with(load).and(", its middle ").with(size(design.load.centre)).and(" from the fixed pivots. Leave it for ten minutes."),
                    say("Then raise by a quarter of the lift and lower again, listening. Take the load off before anything is touched."),
                ],
                vec![
                    say("The deck sinks by about ").with(Amount::Give(PROOF * sag)).and(" and comes back when unloaded."),
                    say("No crack is heard or seen, no bolt has moved, and the crank turns as before."),
                    say("Released, the crank stays where it is."),
                ],
            )
        })
    }
}
