// Arithmetic: each line judged on the player's own figures.

#include <algorithm>
#include <cmath>

#include "game/marking/criteria.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

constexpr int kMostFigures = 4;
/// A mean may be off by half a unit of its last place, and by this at least; a whole number has no last place
/// to speak of.
constexpr double kMeanLeast_cm3 = 0.01;

double mean_tolerance_cm3(const std::string& text) {
  return decimals_written(text) == 0 ? kMeanLeast_cm3 : std::max(half_unit_written(text), kMeanLeast_cm3);
}

Finding open_finding(const Case& marked, const std::string& id, double of) {
  return Finding{Score::arithmetic, id, false, 0.0, of, "", marked.end(), std::nullopt, ""};
}

void grant(Finding& finding, const std::string& seen) {
  finding.met = true;
  finding.points = finding.of;
  finding.seen = seen;
  finding.advice.clear();
}

Finding titres_subtracted(const Case& marked) {
  Finding finding = open_finding(marked, "titres-subtracted", 1.0);
  finding.advice = "Titre = final reading minus initial reading, with two decimals.";
  std::size_t right = 0;
  for (const TitreRow& row : marked.titres) {
    if (!row.initial_cm3 || !row.final_cm3 || !row.recorded_cm3) continue;
    const std::string cell = row.run + "/titre";
    const std::string text = marked.sheet.text(cell);
    const bool same =
        row.written_titre_cm3 && std::fabs(*row.written_titre_cm3 - *row.recorded_cm3) < kSameFigure_cm3;
    if (same && decimals_written(text) == 2) {
      ++right;
      continue;
    }
    const std::string sum = figure_text(*row.final_cm3, 2) + " − " + figure_text(*row.initial_cm3, 2) +
                            " = " + figure_text(*row.recorded_cm3, 2);
    finding.seen = sentence(run_text(row.run)) + ": " + sum + ", " +
                   (text.empty() ? std::string("no titre was written") : "\"" + text + "\" was written") +
                   ".";
    finding.tick = text.empty() ? marked.end() : marked.sheet.written_at(cell);
    return finding;
  }
  if (right == 0) {
    finding.seen = "No run has both readings.";
  } else {
    grant(finding, count_text(right, "titre") + " worked out rightly.");
  }
  return finding;
}

Finding mean_titre(const Case& marked) {
  Finding finding = open_finding(marked, "mean-titre", 1.0);
  finding.advice = "Add the ticked titres and divide by their number; two decimals.";
  const std::string text = marked.sheet.text(kMeanTitre);
  const std::optional<double> written = marked.sheet.number(kMeanTitre);
  const std::optional<double> mean = own_mean_cm3(marked.titres);
  if (!written) {
    finding.seen =
        text.empty() ? "No mean titre was written." : "The mean titre is no number: \"" + text + "\".";
    return finding;
  }
  finding.tick = marked.sheet.written_at(kMeanTitre);
  if (!mean) {
    finding.seen = "A mean of " + text + " was written, but no titre was ticked.";
    return finding;
  }
  finding.seen =
      "The ticked titres have the mean " + figure_text(*mean, 3) + "; \"" + text + "\" was written.";
  if (std::fabs(*written - *mean) <= mean_tolerance_cm3(text) + kSameFigure_cm3) grant(finding, finding.seen);
  return finding;
}

Finding step_finding(const Case& marked, const WorkedStep& worked) {
  Finding finding = open_finding(marked, worked.step.cell, 1.0);
  finding.advice = "Put your own figures from the lines above in again, and mind ratio, dilution and units.";
  if (!worked.written) {
    finding.seen = worked.step.prompt + (worked.text.empty() ? ": nothing was written."
                                                             : ": \"" + worked.text + "\" is no number.");
    return finding;
  }
  finding.tick = worked.tick;
  const std::string written = "\"" + worked.text + "\" " + worked.step.unit + " was written";
  if (worked.right) {
    grant(finding, worked.step.prompt + ": " + written + ", right on the figures above.");
  } else if (worked.expected) {
    finding.seen = worked.step.prompt + ": " + written + "; the figures above give " +
                   significant_text(*worked.expected, 4) + ".";
  } else {
    finding.seen = worked.step.prompt + ": " + written + ", but nothing above leads to it.";
  }
  return finding;
}

Finding figures(const Case& marked, const std::vector<WorkedStep>& working) {
  Finding finding = open_finding(marked, "significant-figures", 1.0);
  finding.advice = "Carry every figure through the working, and give the result to three or four.";
  if (working.empty() || !working.back().written) {
    finding.seen = "No result was written.";
    return finding;
  }
  for (const WorkedStep& worked : working) {
    if (!worked.written) continue;
    const int count = significant_figures(worked.text);
    const bool too_few = count < worked.step.least_figures;
    const bool too_many = &worked == &working.back() && count > kMostFigures;
    if (!too_few && !too_many) continue;
    finding.seen = worked.step.prompt + ": \"" + worked.text + "\" has " +
                   count_text(static_cast<std::size_t>(count), "significant figure") + "; wanted " +
                   (too_few ? "at least " + std::to_string(worked.step.least_figures)
                            : "at most " + std::to_string(kMostFigures)) +
                   ".";
    finding.tick = worked.tick;
    return finding;
  }
  grant(finding, "Every line has figures enough, the result three or four.");
  finding.tick = working.back().tick;
  return finding;
}

}  // namespace

std::optional<double> own_mean_cm3(const std::vector<TitreRow>& titres) {
  double sum = 0.0;
  int count = 0;
  for (const TitreRow& row : titres) {
    const std::optional<double> titre = row.written_titre_cm3 ? row.written_titre_cm3 : row.recorded_cm3;
    if (!row.used || !titre) continue;
    sum += *titre;
    ++count;
  }
  return count > 0 && std::isfinite(sum) ? std::optional(sum / count) : std::nullopt;
}

void mark_arithmetic(const Case& marked, std::vector<Finding>& findings) {
  findings.push_back(titres_subtracted(marked));
  if (marked.level().calculation.empty()) return;
  findings.push_back(mean_titre(marked));
  const std::vector<WorkedStep> working =
      check_working(marked.level(), marked.sheet, own_mean_cm3(marked.titres));
  for (const WorkedStep& worked : working) findings.push_back(step_finding(marked, worked));
  findings.push_back(figures(marked, working));
}

}  // namespace halfdrop
