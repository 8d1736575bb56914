// Arithmetic: each line judged on the player's own figures.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

constexpr int kMostFigures = 4;
Finding open_finding(const Case& marked, const std::string& id, double of) {
  return Finding{Score::arithmetic, id, false, 0.0, of, "", marked.end(), std::nullopt, ""};
}

void grant(Finding& finding, const std::string& seen) {
  finding.met = true;
  finding.points = finding.of;
  finding.seen = seen;
  finding.advice.clear();
}

/// "47.755 − 24.20 = 23.555", in the player's own figures.
std::string subtraction(const Case& marked, const TitreRow& row) {
  const std::string first = marked.sheet.text(row.run + "/initial");
  const std::string last = marked.sheet.text(row.run + "/final");
  const int decimals = std::clamp(std::max(decimals_written(first), decimals_written(last)), 2, 6);
  const std::string difference = figure_text(*row.recorded_cm3, decimals);
  return last + " − " + first + " = " +
         (difference.starts_with('-') ? "−" + difference.substr(1) : difference);
}

Finding titres_subtracted(const Case& marked) {
  Finding finding = open_finding(marked, "titres-subtracted", 1.0);
  finding.advice = say("find.titres_subtracted.advice");
  std::size_t right = 0;
  for (const TitreRow& row : marked.titres) {
    if (!row.recorded_cm3 || never_measured(marked, row.run)) continue;
    const std::string cell = row.run + "/titre";
    const std::string text = marked.sheet.text(cell);
    const bool same = row.written_titre_cm3 &&
                      std::fabs(*row.written_titre_cm3 - *titre_meant_cm3(marked, row)) < kSameFigure_cm3;
    if (same && decimals_written(text) == 2) {
      ++right;
      continue;
    }
    finding.seen = text.empty() ? say("find.titres_subtracted.none", {{"run", sentence(run_text(row.run))},
                                                                      {"sum", subtraction(marked, row)}})
                                : say("find.titres_subtracted.wrong", {{"run", sentence(run_text(row.run))},
                                                                       {"sum", subtraction(marked, row)},
                                                                       {"text", as_written(text)}});
    finding.tick = text.empty() ? marked.end() : marked.sheet.written_at(cell);
    return finding;
  }
  if (right == 0) {
    finding.seen = say("find.no_run");
    finding.judged = false;
  } else {
    grant(finding, say("find.titres_subtracted.right", {{"titres", count_text(right, Counted::titre)}}));
  }
  return finding;
}

/// The first ticked run whose figures were never read; empty when there is none.
std::string never_run(const Case& marked) {
  for (const TitreRow& row : marked.titres) {
    if (row.used && never_measured(marked, row.run)) return run_text(row.run);
  }
  return {};
}

Finding mean_titre(const Case& marked) {
  Finding finding = open_finding(marked, "mean-titre", 1.0);
  finding.advice = say("find.mean_titre.advice");
  const std::string text = marked.sheet.text(kMeanTitre);
  const std::optional<double> written = marked.sheet.number(kMeanTitre);
  const std::optional<double> mean = own_mean_cm3(marked.titres);
  if (!written) {
    finding.judged = !text.empty();
    finding.seen = text.empty() ? say("find.mean_titre.none")
                                : say("find.mean_titre.no_number", {{"text", as_written(text)}});
    return finding;
  }
  finding.tick = marked.sheet.written_at(kMeanTitre);
  if (!mean) {
    finding.seen = say("find.mean_titre.none_ticked", {{"mean", text}});
    return finding;
  }
  if (const std::string run = never_run(marked); !run.empty()) {
    finding.seen = say("find.mean_titre.unmeasured", {{"text", as_written(text)}, {"run", run}});
    return finding;
  }
  finding.seen = say("find.mean_titre.seen", {{"mean", figure_text(*mean, 3)}, {"text", as_written(text)}});
  if (mean_agrees(text, *written, *mean)) grant(finding, finding.seen);
  return finding;
}

Finding step_finding(const Case& marked, const WorkedStep& worked) {
  Finding finding = open_finding(marked, worked.step.cell, 1.0);
  finding.advice = say("find.step.advice");
  if (!worked.written) {
    finding.judged = !worked.text.empty();
    finding.seen =
        worked.text.empty()
            ? say("find.step.none", {{"line", worked.step.prompt}})
            : say("find.step.no_number", {{"line", worked.step.prompt}, {"text", as_written(worked.text)}});
    return finding;
  }
  finding.tick = worked.tick;
  const bool has_unit =
      plain_figure(worked.text) && worked.text.size() > plain_figure(worked.text)->size() + 1;
  const std::string written = as_written(worked.text) + (has_unit ? "" : " " + worked.step.unit);
  if (worked.right) {
    grant(finding, say("find.step.right", {{"line", worked.step.prompt}, {"written", written}}));
  } else if (worked.expected) {
    finding.seen = say("find.step.wrong", {{"line", worked.step.prompt},
                                           {"written", written},
                                           {"expected", significant_text(*worked.expected, 5)}});
  } else {
    finding.seen = say("find.step.from_nothing", {{"line", worked.step.prompt}, {"written", written}});
  }
  return finding;
}

/// What is wrong with the number of figures in one line; empty when nothing.
std::string wrong_figures(const CalculationStep& step, const std::string& text, bool last) {
  const int count = significant_figures(text);
  const bool too_few = count < step.least_figures;
  const int most = std::max(kMostFigures, step.least_figures);
  if (!too_few && !(last && count > most)) return {};
  const std::string has = count_text(static_cast<std::size_t>(count), Counted::figure);
  return too_few ? say("find.figures.too_few", {{"line", step.prompt},
                                                {"text", as_written(text)},
                                                {"has", has},
                                                {"least", std::to_string(step.least_figures)}})
                 : say("find.figures.too_many", {{"line", step.prompt},
                                                 {"text", as_written(text)},
                                                 {"has", has},
                                                 {"most", std::to_string(most)}});
}

/// Of every line that was written, the mean included.
Finding figures(const Case& marked) {
  Finding finding = open_finding(marked, "significant-figures", 1.0);
  finding.advice = say("find.figures.advice");
  const std::vector<CalculationStep>& steps = marked.level().calculation;
  finding.judged = marked.sheet.number(steps.back().cell).has_value();
  finding.seen = say("find.figures.none");
  if (!finding.judged) return finding;
  for (const CalculationStep& step : steps) {
    const std::string text = marked.sheet.text(step.cell);
    if (!number_written(text)) continue;
    const std::string wrong = wrong_figures(step, text, &step == &steps.back());
    if (wrong.empty()) continue;
    finding.seen = wrong;
    finding.tick = marked.sheet.written_at(step.cell);
    return finding;
  }
  grant(finding, say("find.figures.right"));
  finding.tick = marked.sheet.written_at(steps.back().cell);
  return finding;
}

/// Nothing was ever measured: figures worked out from nothing earn nothing.
bool nothing_measured(const Case& marked) {
  return std::none_of(marked.titres.begin(), marked.titres.end(), [&](const TitreRow& row) {
    return (row.recorded_cm3 || row.written_titre_cm3) && !never_measured(marked, row.run);
  });
}

}  // namespace

std::optional<double> own_titre_cm3(const TitreRow& row) {
  if (!row.used) return std::nullopt;
  return row.written_titre_cm3 ? row.written_titre_cm3 : row.recorded_cm3;
}

std::optional<double> own_mean_cm3(const std::vector<TitreRow>& titres) {
  double sum = 0.0;
  int count = 0;
  for (const TitreRow& row : titres) {
    const std::optional<double> titre = own_titre_cm3(row);
    if (!titre) continue;
    sum += *titre;
    ++count;
  }
  return count > 0 && std::isfinite(sum) ? std::optional(sum / count) : std::nullopt;
}

void mark_arithmetic(const Case& marked, std::vector<Finding>& findings) {
  std::vector<Finding> arithmetic;
  arithmetic.push_back(titres_subtracted(marked));
  if (!marked.level().calculation.empty()) {
    arithmetic.push_back(mean_titre(marked));
    const std::vector<WorkedStep> working =
        check_working(marked.level(), marked.sheet, own_mean_cm3(marked.titres));
    for (const WorkedStep& worked : working) arithmetic.push_back(step_finding(marked, worked));
    arithmetic.push_back(figures(marked));
  }
  if (nothing_measured(marked)) {
    for (Finding& finding : arithmetic) {
      finding = open_finding(marked, finding.criterion, finding.of);
      finding.seen = say("find.no_titre_measured");
      finding.judged = false;
    }
  }
  append_findings(Score::arithmetic, std::move(arithmetic), findings);
}

}  // namespace halfdrop
