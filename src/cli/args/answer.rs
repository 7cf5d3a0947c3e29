//! What `answer` can be asked.

use clap::Args;

/// What its help ends with.
pub(super) const HELP: &str = "\
One request a line on standard input, a JSON object; one answer a line on standard output, in the \
order of the requests:
  {\"ask\": \"duration\", \"cylinder\": \"D\", \"pressure\": \"1500 psi\",
   \"flow\": \"15 L/min\"}                                     (all on one line)
  {\"id\": 7, \"ask\": \"setup\", \"device\": \"nasal-cannula\", \"flow\": \"8 L/min\"}
  {\"ask\": \"plan\", \"plan\": {\"cylinders\": \u{2026}, \"legs\": \u{2026}}, \"add\": [\"E\"]}
  {\"ask\": \"stock\", \"list\": \"serial,size,\u{2026}\\nLV-1041,D,\u{2026}\\n\"}
  {\"ask\": \"check\"}      is the rulebook in order?
  {\"ask\": \"book\"}       which rulebook is it, and what does it name?

The other fields are the options of that command, without the two hyphens and with their units. The \
answer is what the command itself answers with --format json, and its exit code:
  {\"line\": 1, \"id\": null, \"ask\": \"duration\", \"exit\": 0, \"answer\": \u{2026}}
A request that can't be used is answered too, with every mistake, its column and what to write \
instead:
  {\"line\": 2, \"id\": null, \"exit\": 2, \"errors\": [{\"field\": \"flow\", \u{2026}}], \u{2026}}
The rulebook is read once. Empty lines are passed over; a line may have 1 MiB.

Example:
  echo '{\"ask\": \"book\"}' | oxyfolio answer --rules rules

Exit code: 0 at the end of the input, 1 errors in the rulebook, 2 could not run.";

/// Options of `answer`.
#[derive(Debug, Args)]
pub struct Answer {
    /// Print the JSON Schemas of requests and answers
    #[arg(long)]
    pub schema: bool,
}
