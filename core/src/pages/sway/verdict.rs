//! What was found, in words, worst first.
use super::Sway;
use crate::pages::Reader;
use crate::pages::document::{Act, Block, Text};
use crate::pages::found::told;
use crate::quantity::{Amount, System};
use crate::report::{Case, Curve, Finding, LEAST_MULTIPLE, SwayReport};

/// The table sideways in one sentence, as far as it is known; empty where nothing is.
#[must_use]
pub fn headline(sway: &SwayReport, system: System) -> String {
    let mut sentences: Vec<String> = sway.gives().map(|phrase| phrase.text(system)).into_iter().collect();
    sentences.extend(sway.collapses().map(|phrase| phrase.text(system)));
    sentences.join(" ")
}

impl Sway {
    /// The sentence, then every finding with what it means.
    pub(super) fn verdict(&self, reader: &Reader) -> Vec<Block> {
        let system = reader.system;
        let Some(sway) = &self.known else {
            return vec![Block::text(
                "The table is being looked at from its end, height by height. The first figures come in a moment.",
            )];
        };
        let mut findings = sway.findings(&self.report.design);
        findings.sort_by(|one, other| one.grade.cmp(&other.grade).then(other.ratio.total_cmp(&one.ratio)));
        let (give, others): (Vec<_>, Vec<_>) =
            findings.into_iter().partition(|finding| finding.curve == Some(Curve::Give));
        let mut blocks: Vec<Block> = give.iter().map(|finding| Block::Text(lead(finding, system))).collect();
        blocks.push(Block::Points(
            others.iter().map(|finding| vec![Block::Text(said(finding, system))]).collect(),
        ));
        blocks.push(Block::note(self.meaning(sway)));
        blocks
    }

    /// How far these figures go.
    fn meaning(&self, sway: &SwayReport) -> String {
        let mut text = format!(
            "The critical load is that of a perfect table on paper, and reads up to an eighth too high; nothing built in a shop is so straight. At least {LEAST_MULTIPLE:.0} times the load is wanted at every height.",
        );
        if sway.case(Case::Stiff).is_empty() {
            text += " The soft and the stiff end of each band are still being computed.";
        } else {
            text += " Every figure hangs on stiffnesses that no handbook has; each stands as a band from soft to stiff joints with the best guess in it. Open a figure for its reason.";
        }
        text
    }
}

/// The sentence before all others.
fn lead(finding: &Finding, system: System) -> Text {
    let text = Text::default().strong(finding.phrase.text(system));
    match &finding.remedy {
        Some(remedy) => text.words(" ").words(remedy.text(system)),
        None => text.words(" That is firm for a table built in a shop."),
    }
}

/// A finding with its grade, what would help, and the way to where it happens.
fn said(finding: &Finding, system: System) -> Text {
    let mut text = told(finding, finding.remedy.as_ref(), system);
    if let Some(height) = finding.height {
        let words = format!("Show at {}", Amount::Size(height).text(system));
        text = text.words(" ").act(Act::Go { words, height, check: "" });
    }
    text
}
