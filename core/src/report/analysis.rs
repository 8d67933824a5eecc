//! How a report is made: what the design is, how it moves, whether it holds, what is to be said of it.
use super::fault::unsolvable;
use super::reach::stands;
use super::{Report, STATIONS, Station, Unsound, findings};
use crate::checks::{self, Check};
use crate::design::Design;
use crate::mechanics::{Solver, idealise};
use crate::parts::parts;

/// The report of a design.
///
/// # Errors
/// [`Unsound`] where an input lies outside its range or the inputs do not make a table that can stand.
pub fn analyse(design: &Design) -> Result<Report, Unsound> {
    let mut analysis = Analysis::new(design)?;
    loop {
        if let Some(report) = analysis.advance(STATIONS)? {
            return Ok(report);
        }
    }
}

/// The same with nothing looked for in it: no findings.
pub(super) fn computed(design: &Design) -> Result<Report, Unsound> {
    let mut analysis = Analysis::new(design)?;
    analysis.sweep(STATIONS)?;
    let checks = analysis.check()?;
    Ok(analysis.report(checks))
}

/// A report in the making, for those who must not keep others waiting until it is there.
#[derive(Clone, Debug)]
pub struct Analysis {
    design: Design,
    solver: Solver,
    share: f64,
    stations: Vec<Station>,
    checks: Option<Vec<Check>>,
}

impl Analysis {
    /// Begins; whether the design can stand at all is known by then.
    ///
    /// # Errors
    /// As [`analyse`].
    pub fn new(design: &Design) -> Result<Self, Unsound> {
        stands(design)?;
        let mechanism = idealise(design).map_err(|faults| unsolvable(&faults))?;
        let solver = Solver::new(&mechanism).map_err(|faults| unsolvable(&faults))?;
        Ok(Self {
            design: design.clone(),
            solver,
            share: worse_share(design),
            stations: Vec::with_capacity(STATIONS),
            checks: None,
        })
    }

    /// Goes on: with so many heights, at least one, until all [`STATIONS`] are known, then with the checks, then with what is to be said. Returns the
    /// report when it is there; the analysis is done with then.
    ///
    /// # Errors
    /// As [`analyse`].
    pub fn advance(&mut self, heights: usize) -> Result<Option<Report>, Unsound> {
        if self.stations.len() < STATIONS {
            self.sweep(heights.max(1))?;
            return Ok(None);
        }
        let Some(checks) = self.checks.take() else {
            self.checks = Some(self.check()?);
            return Ok(None);
        };
        let mut report = self.report(checks);
        report.findings = findings::of(&report);
        Ok(Some(report))
    }

    /// So many heights more, even in height from the lowest to the highest deck.
    fn sweep(&mut self, heights: usize) -> Result<(), Unsound> {
        let (low, high) = (self.design.lift.lowest.to_m(), self.design.lift.highest.to_m());
        let last = (STATIONS - 1) as f64;
        let known = self.stations.len();
        for at in known..STATIONS.min(known + heights) {
            let height = low + (high - low) * at as f64 / last;
            let station = Station::new(&self.solver, height, self.share, false)
                .map_err(|fault| unsolvable(&[fault]))?;
            self.stations.push(station);
        }
        Ok(())
    }

    fn check(&self) -> Result<Vec<Check>, Unsound> {
        let levels: Vec<_> = self.stations.iter().map(Station::level).collect();
        checks::all(&self.design, &self.solver, &levels, self.share).map_err(|fault| unsolvable(&[fault]))
    }

    /// What is known, as a report without findings.
    fn report(&mut self, checks: Vec<Check>) -> Report {
        Report {
            design: self.design.clone(),
            parts: parts(&self.design),
            stations: core::mem::take(&mut self.stations),
            checks,
            findings: Vec::new(),
            share: self.share,
            solver: self.solver.clone(),
        }
    }
}

/// The worse side's share of the load: the lever rule between the two outer arms.
pub(super) fn worse_share(design: &Design) -> f64 {
    0.5 + (design.load.across.to_m() / design.frames.spread.to_m()).abs()
}
