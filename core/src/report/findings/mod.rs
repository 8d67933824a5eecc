//! What is looked at, one file a question. Each finding names its limit and, where a limit is passed, what would help.

mod clash;
mod crank;
mod deck;
mod ends;
mod frames;
mod holes;
mod laps;
mod load;
mod sag;
mod screw;
mod seats;
mod sheet;
mod strength;

pub(super) use sag::COLLAPSES as SAG_COLLAPSES;
pub(crate) use sag::UNSAFE as SAG_UNSAFE;

use super::Report;
use super::finding::{Cure, Finding, Grade, sorted};
use crate::quantity::Phrase;

/// Whether anything was found that must not stay, whatever the builder accepts at the crank and however many sheets there are.
pub(super) fn stops(report: &Report) -> bool {
    let sheet = sheet::area(report);
    report.over().any(|found| found.cure != Some(Cure::Crank) && *found != sheet)
}

impl Report {
    /// Findings that are more than fine, worst first.
    pub fn faults(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(|finding| finding.grade != Grade::Fine)
    }

    /// Findings that pass a limit, worst first.
    pub fn over(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(|finding| finding.grade == Grade::Over)
    }

    /// What would help against one of its findings, tried now where it has yet to be found; none where nothing that was tried helps. Takes up to
    /// as long as a hundred heights.
    #[must_use]
    pub fn remedy(&self, finding: &Finding) -> Option<Phrase> {
        if finding.remedy.is_some() {
            return finding.remedy.clone();
        }
        match finding.cure? {
            Cure::Check(id) => strength::remedy(self, self.check(id)?),
            Cure::Sag => Some(sag::remedy(self)),
            Cure::Crank => crank::remedy(self),
            Cure::Tipping => seats::remedy(self),
        }
    }
}

/// Everything found, worst first.
pub(super) fn of(report: &Report) -> Vec<Finding> {
    let mut findings = vec![sag::drop(report), sheet::area(report)];
    findings.extend(
        [crank::effort(report), crank::floor(report), screw::holding(report), seats::tipping(report)]
            .into_iter()
            .flatten(),
    );
    findings.extend(strength::checks(report));
    findings.extend(strength::all_hold(report));
    findings.extend(ends::left(report));
    findings.extend(seats::uplift(report));
    findings.extend(frames::stands(report));
    findings.extend(frames::clears(report));
    findings.extend(frames::rails(report));
    findings.extend(frames::stack(report));
    findings.extend(deck::grain(report));
    findings.extend(screw::length(report));
    findings.extend(clash::clashes(report));
    findings.extend(laps::laps(report));
    findings.extend(holes::off(report));
    findings.extend(load::beside(report));
    sorted(findings)
}
