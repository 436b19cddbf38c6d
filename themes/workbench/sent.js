// What a reader may send home: measurements of this plan, in a file of entries, and nothing else.

// The file's text; `ids` are letters by chance, one for each sheet that was measured, so that each counts
// once. `sums` are what the readings of a sheet come to, with `measured` and the cutter's name in mm.
function sentText(data, { sheets }, sums, { went, outcome }, ids) {
  const entries = data.sheets
    .filter(({ name }) => sums[name].measured)
    .map(({ name }, spot) => {
      const { fit, cut } = sheets[name];
      const { mean, nominal } = sums[name];
      const entry = { plan: data.plan, release: data.release, sheet: name, thickness: `${digits(mean, 2)} mm`, fit: `${digits(fit, 3)} mm` };
      if (cut && nominal) entry["true-cut"] = `${digits(nominal + cut, 2)} mm`;
      if (went) entry.went = went;
      if (outcome) entry.outcome = outcome;
      return { section: "sent", id: `sent-${ids[spot]}`, entry };
    });
  return `${JSON.stringify({ format: data.entries, entries }, null, 1)}\n`;
}

// Letters and digits by chance, which say nothing of who saves the file.
function byChance(count) {
  const letters = crypto.getRandomValues(new Uint8Array(count));
  return [...letters].map((each) => "abcdefghjkmnpqrstuvwxyz23456789"[each % 31]).join("");
}
