//! Is it any good? A table is judged in stages, cheap ones first: each raises the bounds below its figures, or finds what rules it out.
//!
//! Every stage's bound is a true one: heights looked at early are among those of the full analysis, whose greatest figures and worst checks
//! can only be greater and worse.
use super::candidate::Misfit;
use super::figures::{Figures, closed, short};
use super::space::Choice;
use super::targets::{Measure, Targets};
use crate::checks::{self, PUSHES, Stance, Verdict};
use crate::design::{Design, check};
use crate::mechanics::frame3::Frame3;
use crate::mechanics::{Mechanism, Solver, idealise};
use crate::parts::{Form, Part, Rides, parts};
use crate::quantity::{Length, Money};
use crate::report::sway::{Case, frame, told};
use crate::report::{
    LEAST_MULTIPLE, Report, STATIONS, SWAY_STATIONS, Station, analyse, findings, worse_share,
};
use crate::workshop::hardware::bill;
use crate::workshop::sheets::{Job, Search as Packing, jobs};
use std::collections::BTreeMap;

/// Why a table is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fault {
    /// Its sizes leave no room for it.
    Misfit(Misfit),
    /// The linkage cannot be put together, or the screw cannot lift it.
    Stuck,
    /// A figure is over its limit.
    Over(Measure),
    /// A check fails, by its title.
    Check(&'static str),
    /// It sags so much that it may fold flat, wheels run off, or parts are in each other's way.
    Found,
    /// It leans too easily: its critical load is below [`LEAST_MULTIPLE`] times the load.
    Sway,
    /// A part is larger than a sheet.
    Sheet,
}

/// Places among the [`STATIONS`] that are looked at first.
const FIRST_LOOKS: [&[usize]; 2] = [&[0], &[40, 110, STATIONS - 1]];

/// Places among the [`SWAY_STATIONS`] that are looked at first.
const FIRST_LEANS: [usize; 3] = [0, 9, SWAY_STATIONS - 1];

/// Layouts tried for the parts of one thickness.
const LAYOUTS: u32 = 600;

/// Layouts in a slice of work.
const LAYOUTS_A_SLICE: u32 = 150;

/// Heights of the sway in a slice of work.
const LEANS_A_SLICE: usize = 3;

/// Height of one of so many places from the lowest to the highest deck, m: as the full analysis has it.
fn height(design: &Design, at: usize, of: usize) -> f64 {
    let (low, high) = (design.lift.lowest.to_m(), design.lift.highest.to_m());
    low + (high - low) * at as f64 / (of - 1) as f64
}

/// The design of a combination with the bounds that closed forms give.
pub(super) fn sketch(choice: &Choice, targets: &Targets) -> Result<(Design, Figures), Fault> {
    let design = choice.design(targets).map_err(Fault::Misfit)?;
    let bounds = closed(choice, &design, targets);
    Ok((design, bounds))
}

/// Weight and sheet as they are, cost and number of sheets as they are at least.
pub(super) fn weigh(design: &Design, bounds: &mut Figures) {
    let list = parts(design);
    let stands = list.iter().filter(|part| part.rides != Rides::Aside);
    bounds.raise(Measure::Weight, stands.map(Part::total).sum());
    let area: f64 = list.iter().map(Part::sheet_area).sum();
    bounds.raise(Measure::Area, area);
    let least = least_sheets(design, &list);
    bounds.raise(Measure::Sheets, least);
    let (bought, sheet) = prices(design, &list);
    bounds.raise(Measure::Cost, bought + sheet * least);
}

/// Sheets by the area of the parts alone, each thickness by itself; offcuts are taken as used to the last corner, wherever most is cut.
fn least_sheets(design: &Design, list: &[Part]) -> f64 {
    let shop = &design.shop;
    let area = |sides: [Length; 2]| sides.iter().map(|side| side.to_m()).product::<f64>();
    let trimmed = |side: Length| (side - shop.trim * 2).max(Length::ZERO);
    let room = area([shop.sheet_length, shop.sheet_width].map(trimmed));
    let offcuts = [[shop.offcut_length, shop.offcut_width], [shop.second_length, shop.second_width]];
    let free: f64 = offcuts.map(area).iter().sum();
    let mut areas: BTreeMap<Length, f64> = BTreeMap::new();
    for part in list.iter().filter(|part| part.form == Form::Sheet) {
        *areas.entry(part.layer()).or_default() += part.sheet_area();
    }
    if room <= 0.0 {
        return 0.0;
    }
    areas.values().map(|area| ((area - free).max(0.0) / room - 1e-9).ceil()).sum()
}

/// What all but the sheets costs, and what one sheet costs, in units of money; what has no price counts as nothing.
fn prices(design: &Design, list: &[Part]) -> (f64, f64) {
    let shop = &design.shop;
    let others = [
        shop.bar_price,
        shop.screw_price,
        shop.bearing_price,
        shop.caster_price,
        shop.bolt_price,
        shop.small_price,
    ];
    if others.iter().all(|price| *price == Money::ZERO) {
        return (0.0, shop.sheet_price.value());
    }
    (bill(design, list, &[]).cost.value(), design.shop.sheet_price.value())
}

/// A few heights of the analysis, with all checks at them.
pub(super) fn look(design: &Design, bounds: &mut Figures) -> Result<(), Fault> {
    if let Some(fault) = check(design).first() {
        return Err(Fault::Check(fault.field.label));
    }
    let solver = solver(design)?;
    let share = worse_share(design);
    // Most fail at the lowest deck, where forces are greatest: that alone first.
    for places in FIRST_LOOKS {
        let stations = places
            .iter()
            .map(|at| Station::new(&solver, height(design, *at, STATIONS), share, false))
            .collect::<Result<Vec<_>, _>>()
            .map_err(|_| Fault::Stuck)?;
        for station in &stations {
            bounds.raise(Measure::Crank, station.crank_raise());
            bounds.raise(Measure::Sag, station.sag().total());
        }
        let levels: Vec<_> = stations.iter().map(Station::level).collect();
        let list = checks::all(design, &solver, &levels, share).map_err(|_| Fault::Stuck)?;
        if let Some(fault) = failed(design, &stations, &list) {
            return Err(fault);
        }
    }
    Ok(())
}

fn solver(design: &Design) -> Result<Solver, Fault> {
    let mechanism = idealise(design).map_err(|_| Fault::Stuck)?;
    Solver::new(&mechanism).map_err(|_| Fault::Stuck)
}

/// The worst check that fails, but for the crank's, which is a target of its own, and for a push that only the empty table does not stand: what
/// the table weighs and how wide its base is follow from what is asked for, and its report says so.
fn failed(design: &Design, stations: &[Station], list: &[checks::Check]) -> Option<Fault> {
    let stands = |check: &checks::Check| {
        PUSHES.iter().position(|id| *id == check.id).is_some_and(|way| {
            let push = design.strength.lean.to_n();
            let stances = stations.iter().filter_map(|station| Stance::of(design, &station.level()));
            stances
                .into_iter()
                .all(|stance| stance.is_loaded() && stance.least_push(stance.centre)[way] >= push)
        })
    };
    list.iter()
        .filter(|check| check.verdict == Verdict::Over && check.group != checks::Group::Crank)
        .filter(|check| !stands(check))
        .max_by(|one, other| one.ratio.total_cmp(&other.ratio))
        .map(|check| Fault::Check(check.title))
}

/// The give sideways at a few heights.
pub(super) fn lean(design: &Design, bounds: &mut Figures) -> Result<(), Fault> {
    let solver = solver(design)?;
    let mechanism = frame(design, solver.mechanism(), Case::Middle);
    for at in FIRST_LEANS {
        bounds.raise(Measure::Give, gives(&solver, &mechanism, height(design, at, SWAY_STATIONS))?);
    }
    Ok(())
}

/// The give sideways at a height, m; a fault where the critical load is too low there.
fn gives(solver: &Solver, space: &Mechanism, height: f64) -> Result<f64, Fault> {
    let pose = solver.pose_at_height(height).map_err(|_| Fault::Stuck)?;
    let answers = Frame3::new(space, &pose).map_err(|_| Fault::Stuck)?.answers();
    if answers.lambda.is_some_and(|multiple| multiple < LEAST_MULTIPLE) {
        return Err(Fault::Sway);
    }
    Ok(told::gives(&answers))
}

/// The full judgement of one table, in slices.
pub(super) struct Trial {
    design: Design,
    figures: Figures,
    report: Option<Report>,
    /// The frame in space, and the heights of the sway that are done.
    space: Option<Mechanism>,
    leant: usize,
    packing: Option<Packing>,
    /// Parts of other thicknesses that are not laid out yet.
    waiting: Vec<Job>,
    sheets: usize,
    tried: u32,
}

impl Trial {
    pub fn new(design: Design, targets: &Targets) -> Self {
        let mut figures = Figures::NONE;
        for (measure, missed) in short(&design, targets) {
            figures.0[measure.at()] = missed;
        }
        Self {
            design,
            figures,
            report: None,
            space: None,
            leant: 0,
            packing: None,
            waiting: Vec::new(),
            sheets: 0,
            tried: 0,
        }
    }

    /// A slice of work: the figures once they are known, nothing while they are not.
    pub fn advance(&mut self) -> Result<Option<Figures>, Fault> {
        let (Some(report), Some(space)) = (&self.report, &self.space) else {
            self.begin()?;
            return Ok(None);
        };
        if self.leant < SWAY_STATIONS {
            for at in self.leant..(self.leant + LEANS_A_SLICE).min(SWAY_STATIONS) {
                let give = gives(report.solver(), space, height(&self.design, at, SWAY_STATIONS))?;
                let known = &mut self.figures.0[Measure::Give.at()];
                *known = known.max(give);
            }
            self.leant += LEANS_A_SLICE;
            return Ok(None);
        }
        if let Some(packing) = &mut self.packing {
            if !packing.is_least() && self.tried < LAYOUTS {
                packing.advance(LAYOUTS_A_SLICE);
                self.tried += LAYOUTS_A_SLICE;
                return Ok(None);
            }
            if !packing.best().left.is_empty() {
                return Err(Fault::Sheet);
            }
            self.sheets += packing.best().bought(packing.job());
            self.packing = None;
        }
        if let Some(job) = self.waiting.pop() {
            (self.packing, self.tried) = (Some(Packing::new(&job)), 0);
            return Ok(None);
        }
        self.figures.0[Measure::Sheets.at()] = self.sheets as f64;
        let (bought, sheet) = prices(&self.design, &report.parts);
        self.figures.0[Measure::Cost.at()] = bought + sheet * self.sheets as f64;
        Ok(Some(self.figures))
    }

    /// The full analysis.
    fn begin(&mut self) -> Result<(), Fault> {
        let report = analyse(&self.design).map_err(|_| Fault::Stuck)?;
        if let Some(fault) = failed(&self.design, &report.stations, &report.checks) {
            return Err(fault);
        }
        if findings::stops(&report) {
            return Err(Fault::Found);
        }
        let stands = report.parts.iter().filter(|part| part.rides != Rides::Aside);
        let figures = &mut self.figures.0;
        figures[Measure::Crank.at()] = report.greatest(Station::crank_raise).0;
        figures[Measure::Turns.at()] = report.turns();
        figures[Measure::Sag.at()] = report.greatest(|station| station.sag().total()).0;
        figures[Measure::Weight.at()] = stands.map(Part::total).sum();
        figures[Measure::Area.at()] = report.parts.iter().map(Part::sheet_area).sum();
        self.space = Some(frame(&self.design, report.mechanism(), Case::Middle));
        self.waiting = jobs(&self.design, &report.parts);
        self.report = Some(report);
        Ok(())
    }

    /// What is known of its figures.
    pub const fn known(&self) -> &Figures {
        &self.figures
    }
}

/// The figures of a design for some targets, judged from beginning to end.
///
/// # Errors
/// What rules it out, whatever the limits.
pub fn judge(design: &Design, targets: &Targets) -> Result<Figures, Fault> {
    let mut trial = Trial::new(design.clone(), targets);
    loop {
        if let Some(figures) = trial.advance()? {
            return Ok(figures);
        }
    }
}
