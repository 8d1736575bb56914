// Marks for a person at a terminal: at most kWidth columns.

#include <algorithm>
#include <cmath>
#include <numeric>

#include "game/marking/cause_titles.h"
#include "game/marking/next_fix.h"
#include "game/marking/wording.h"
#include "game/marking/written_number.h"
#include "game/records/drill_text.h"
#include "game/records/marks_json.h"
#include "game/records/text_layout.h"
#include "game/records/uncertainty_text.h"

namespace halfdrop {

namespace {

constexpr double kWorthNaming_cm3 = 0.0005;
constexpr std::size_t kMostCauses = 6;

std::string figure(std::optional<double> value, int decimals) {
  return value && std::isfinite(*value) && std::fabs(*value) < 1e6 ? figure_text(*value, decimals) : "-";
}

std::string signed_figure(double value, int decimals) {
  const std::string text = signed_cm3_text(value, decimals);
  return text.substr(0, text.find(' '));
}

std::string head(const MarkedAttempt& marked, const std::string& attempt_name) {
  std::string out = wrapped("", marked.level_title + " (" + marked.level_id + ")");
  out += wrapped("", "Attempt " + attempt_name + (marked.alias.empty() ? "" : ", by " + marked.alias) + ", " +
                         std::string(way_name(marked.way)));
  if (marked.outcome.reproduced) {
    return out + wrapped("", marked.outcome.compared
                                 ? "Replayed: nothing differs."
                                 : "Replayed, but not verified: there is no closing line to "
                                   "compare it with.");
  }
  return out + wrapped("", "NOT REPRODUCED from " + figure_text(seconds(marked.outcome.first_difference), 1) +
                               " s on: " + marked.outcome.message);
}

/// What was written, as it was written; a dash for nothing, cut where it would break the table.
std::string own(const std::string& text) {
  constexpr std::size_t kFits = 8;
  if (text.empty()) return "-";
  if (columns(text) <= kFits) return tame(text);
  std::string cut = tame(plain_figure(text).value_or(text)).substr(0, kFits - 1);
  while (!cut.empty() && (continues(cut.back()) || static_cast<unsigned char>(cut.back()) >= 0xC0U))
    cut.pop_back();
  return plain_figure(text) && columns(*plain_figure(text)) <= kFits ? *plain_figure(text) : cut + "…";
}

int recorded_decimals(const TitreRow& row) {
  return std::clamp(std::max(decimals_written(row.initial_text), decimals_written(row.final_text)), 2, 4);
}

std::string titre_table(const MarkedAttempt& marked) {
  if (marked.titres.empty()) return "No reading was written.\n";
  std::string out = "  " + left("run", 8) + right("initial", 9) + right("final", 9) + right("titre", 9) +
                    right("ideal", 9) + right("off", 9) + "  counts\n";
  for (const TitreRow& row : marked.titres) {
    const bool sane = row.recorded_cm3 && std::fabs(*row.recorded_cm3) < 1e6;
    out += "  " + left(row.run, 8) + right(own(row.initial_text), 9) + right(own(row.final_text), 9) +
           right(figure(row.recorded_cm3, recorded_decimals(row)), 9) +
           right(figure_text(marked.ideal_titre_cm3, 3), 9) +
           right(sane ? signed_figure(*row.recorded_cm3 - marked.ideal_titre_cm3, 3) : "-", 9) +
           (row.used ? "  yes" : "") + "\n";
  }
  return out;
}

/// The first of two endpoints: what was read there, and how far its titre is from the ideal one.
std::string first_titres(const MarkedAttempt& marked) {
  if (!marked.ideal_first_titre_cm3) return {};
  std::string out;
  for (const TitreRow& row : marked.titres) {
    if (!row.first || !row.first->recorded_cm3 || std::fabs(*row.first->recorded_cm3) >= 1e6) continue;
    const double off_cm3 = *row.first->recorded_cm3 - *marked.ideal_first_titre_cm3;
    out += (out.empty() ? "" : ", ") + run_text(row.run) + " " + figure_text(*row.first->recorded_cm3, 2) +
           " (" + signed_figure(off_cm3, 3) + ")";
  }
  return wrapped("", "First titres, off the ideal " + figure_text(*marked.ideal_first_titre_cm3, 3) +
                         " cm³: " + (out.empty() ? "none" : out) + ".");
}

std::string result_lines(const MarkedAttempt& marked) {
  std::string out = wrapped(
      "", "Mean titre written: " + (marked.mean_text.empty() ? "none" : as_written(marked.mean_text)) +
              " (cm³). Ideal titre: " + figure_text(marked.ideal_titre_cm3, 3) + " cm³.");
  std::string result = "Result written: ";
  result +=
      marked.reported_text.empty() ? "none" : as_written(marked.reported_text) + " (" + marked.unit + ")";
  result += ". True: " + significant_text(marked.true_value, 4) + " " + marked.unit;
  if (marked.reported && marked.true_value != 0.0) {
    const double off = 100.0 * (*marked.reported / marked.true_value - 1.0);
    if (std::fabs(off) < 1e4) result += " (" + signed_figure(off, 1) + " %)";
  }
  return out + wrapped("", result + ".");
}

std::string breakdown_lines(const TitreRow& row, const TitreBreakdown& parts, const std::string& titre) {
  std::array<std::size_t, kCauses> order{};
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::fabs(parts.causes_cm3[a]) > std::fabs(parts.causes_cm3[b]);
  });
  std::string out = "  " + sentence(run_text(row.run)) + titre + ": " +
                    signed_cm3_text(parts.recorded_cm3 - parts.ideal_cm3, 3) + " against the ideal titre\n";
  double rest_cm3 = parts.remainder_cm3;
  std::size_t named = 0;
  for (const std::size_t i : order) {
    const double cm3 = parts.causes_cm3[i];
    if (named >= kMostCauses || std::fabs(cm3) < kWorthNaming_cm3) {
      rest_cm3 += cm3;
      continue;
    }
    ++named;
    out +=
        right(signed_figure(cm3, 3), 12) + "  " + std::string(cause_title(static_cast<Cause>(i), cm3)) + "\n";
  }
  return std::fabs(rest_cm3) < kWorthNaming_cm3
             ? out
             : out + right(signed_figure(rest_cm3, 3), 12) + "  everything else\n";
}

std::string breakdowns(const MarkedAttempt& marked) {
  std::string out;
  for (const TitreRow& row : marked.titres) {
    if (row.first && row.first->breakdown)
      out += breakdown_lines(row, *row.first->breakdown, ", first titre");
    if (row.breakdown) out += breakdown_lines(row, *row.breakdown, row.first ? ", whole titre" : "");
  }
  return out.empty() ? out : "\nWhere each titre came from (cm³; + raised it)\n" + out;
}

/// The reported result's distance from the truth, in parts of 100 ln: the largest by name.
std::string split_lines(const ResultSplit& split) {
  std::vector<ResultPart> parts = split.parts;
  std::stable_sort(parts.begin(), parts.end(), [](const ResultPart& a, const ResultPart& b) {
    return std::fabs(a.percent) > std::fabs(b.percent);
  });
  constexpr double kWorthNaming_percent = 0.005;
  std::string out = "\nAnd on to the result: " + signed_figure(split.percent, 2) +
                    " (100 ln of reported over true, so that the parts add up)\n";
  double rest = 0.0;
  std::size_t named = 0;
  for (const ResultPart& part : parts) {
    if (named >= kMostCauses || std::fabs(part.percent) < kWorthNaming_percent) {
      rest += part.percent;
      continue;
    }
    ++named;
    out += right(signed_figure(part.percent, 2), 12) + "  " + part.name + "\n";
  }
  return std::fabs(rest) < kWorthNaming_percent
             ? out
             : out + right(signed_figure(rest, 2), 12) + "  everything else\n";
}

/// At the head: what gains most.
std::string next_lines(const MarkedAttempt& marked) {
  const std::optional<NextFix> fix = next_fix(marked);
  if (!fix)
    return "\n" + wrapped("Next time: ", "just so again; nothing stands out that hands or eyes could mend.");
  return "\n" + wrapped("Next time: ", next_fix_text(*fix));
}

std::string points_text(double points) { return figure_text(points, points == std::floor(points) ? 0 : 1); }

std::string scores(const Marks& marks) {
  std::string out =
      "\nMarks\n  " + left("safety", 12) + (marks.safe ? "met" : "NOT MET: the total is 0") + "\n";
  for (const Score score : {Score::hand, Score::eye, Score::record, Score::arithmetic}) {
    const Marks::Part& part = marks.parts[static_cast<std::size_t>(score) - 1];
    if (part.of == 0.0) continue;  // a drill has not all of them
    out += "  " + left(std::string(score_name(score)), 12) + right(points_text(part.points), 4) + " of " +
           points_text(part.of) + "\n";
  }
  return out + "  " + left("total", 12) + right(points_text(marks.total), 4) + " of " +
         points_text(marks.of) + "\n";
}

std::string cost_text(const Finding& finding) {
  if (!finding.cost_cm3 || !std::isfinite(*finding.cost_cm3) || finding.met) return {};
  const std::string microlitres = signed_figure(1000.0 * *finding.cost_cm3, 0);
  return " Cost: " + microlitres + " µL.";
}

enum class Group { unmet, met, harmless };

Group group_of(const Finding& finding) {
  if (!finding.met) return Group::unmet;
  return is_harmless(finding) ? Group::harmless : Group::met;
}

std::string finding_lines(const MarkedAttempt& marked, Group group) {
  std::string out;
  for (const Finding& finding : marked.findings) {
    if (group_of(finding) != group) continue;
    const std::string first = "  " + left(std::string(score_name(finding.score)), 12);
    const std::string when = finding.met ? "" : " [" + figure_text(seconds(finding.tick), 0) + " s]";
    out += wrapped(first, finding.seen + cost_text(finding) + when);
    if (!finding.advice.empty()) out += wrapped(std::string(columns(first), ' ') + "> ", finding.advice);
  }
  return out;
}

}  // namespace

std::string marks_text(const MarkedAttempt& marked, const std::string& attempt_name,
                       const std::optional<FirstGo>& first_go) {
  std::string out = head(marked, attempt_name) + next_lines(marked);
  out += marked.drill
             ? drill_text(*marked.drill, first_go)
             : "\nTitres (cm³)\n" + titre_table(marked) + first_titres(marked) + result_lines(marked) +
                   breakdowns(marked) + (marked.result_split ? split_lines(*marked.result_split) : "") +
                   (marked.uncertainty ? uncertainty_text(*marked.uncertainty) : "");
  out += scores(marked.marks);
  const std::array<std::pair<Group, const char*>, 3> groups = {
      {{Group::unmet, "Not met"},
       {Group::met, "Met"},
       {Group::harmless, "Often taken for a fault, and none"}}};
  for (const auto& [group, title] : groups) {
    const std::string lines = finding_lines(marked, group);
    if (!lines.empty()) out += "\n" + std::string(title) + "\n" + lines;
  }
  return out + "\n" +
         wrapped(
             "",
             "This is a rehearsal. It is no evidence of practical competence, and no replacement for a risk "
             "assessment.");
}

}  // namespace halfdrop
