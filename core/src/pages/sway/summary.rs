//! What the table is sideways, for paper: the sentences alone, without remedies and single figures.
use std::rc::Rc;

use super::{SWEEP, Sway};
use crate::pages::document::Document;
use crate::pages::{Page, Reader};
use crate::report::{Finding, Report};
use crate::share::address::View;

/// The sentences of the Sway page; its work ends when they have their last figures.
pub(in crate::pages) struct Summary(Sway);

impl Summary {
    /// Over a report; nothing is computed yet.
    pub(in crate::pages) fn new(report: Rc<Report>) -> Self {
        Self(Sway::new(report))
    }

    /// All findings, those of the report and, as soon as they are known, those of the slow one, worst first.
    pub(in crate::pages) fn findings(&self) -> &[Finding] {
        &self.0.findings
    }
}

impl Page for Summary {
    fn advance(&mut self) -> bool {
        !self.0.is_settled() && self.0.advance() && !self.0.is_settled()
    }

    fn progress(&self) -> f64 {
        if self.0.is_settled() { 1.0 } else { self.0.progress() / SWEEP }
    }

    fn document(&self, reader: &Reader) -> Document {
        let blocks = if self.0.refused.is_empty() { self.0.verdict(reader) } else { self.0.refusal(reader) };
        Document { title: View::Sway.title().into(), blocks }
    }
}
