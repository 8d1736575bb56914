#include "game/records/marks_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "game/level/strict_json.h"
#include "game/marking/next_fix.h"
#include "game/marking/wording.h"
#include "game/records/drill_json.h"

namespace halfdrop {

namespace {

/// JSON has no infinities: what is not finite is null, as is what was not written.
Json number(std::optional<double> value) {
  return value && std::isfinite(*value) ? Json(*value) : Json(nullptr);
}

Json breakdown_object(const TitreBreakdown& breakdown) {
  Json causes = Json::object();
  for (std::size_t i = 0; i < kCauses; ++i) {
    causes[std::string(cause_id(static_cast<Cause>(i)))] = number(breakdown.causes_cm3[i]);
  }
  return causes;
}

/// Of two endpoints the first: the same figures from the initial reading to the one between.
Json first_object(const FirstTitre& first, double ideal_cm3) {
  Json titre;
  titre["reading_cm3"] = number(first.reading_cm3);
  titre["recorded_cm3"] = number(first.recorded_cm3);
  titre["ideal_cm3"] = number(tidy(ideal_cm3));
  titre["breakdown"] = first.breakdown ? breakdown_object(*first.breakdown) : Json(nullptr);
  titre["remainder_cm3"] = first.breakdown ? number(first.breakdown->remainder_cm3) : Json(nullptr);
  return titre;
}

Json titre_object(const TitreRow& row, const MeanTitres& ideal) {
  Json titre;
  titre["run"] = row.run;
  titre["initial_cm3"] = number(row.initial_cm3);
  titre["final_cm3"] = number(row.final_cm3);
  titre["recorded_cm3"] = number(row.recorded_cm3);
  titre["ideal_cm3"] = number(tidy(ideal.whole_cm3));
  titre["used"] = row.used;
  titre["breakdown"] = row.breakdown ? breakdown_object(*row.breakdown) : Json(nullptr);
  titre["remainder_cm3"] = row.breakdown ? number(row.breakdown->remainder_cm3) : Json(nullptr);
  if (row.first) titre["first"] = first_object(*row.first, ideal.first_cm3.value_or(0.0));
  return titre;
}

Json finding_object(const Finding& finding) {
  Json object;
  object["criterion"] = finding.criterion;
  object["met"] = finding.met;
  object["seen"] = finding.seen;
  object["tick"] = finding.tick;
  object["cost_cm3"] = number(finding.cost_cm3);
  object["advice"] = finding.advice;
  return object;
}

Json marks_object(const Marks& marks) {
  Json object;
  object["safety"] = marks.safe;
  for (const Score score : {Score::hand, Score::eye, Score::record, Score::arithmetic}) {
    object[std::string(score_name(score))] = number(marks.parts[static_cast<std::size_t>(score) - 1].points);
  }
  object["total"] = number(marks.total);
  object["of"] = number(marks.of);
  return object;
}

Json budget_line(const BudgetLine& line) {
  Json object;
  object["quantity"] = line.quantity.name;
  object["value"] = number(tidy(line.quantity.value));
  object["unit"] = line.quantity.unit;
  object["standard"] = number(line.quantity.standard);
  object["sensitivity"] = number(line.sensitivity);
  object["contribution"] = number(line.contribution);
  object["share"] = number(line.share);
  return object;
}

Json uncertainty_object(const OwnUncertainty& own) {
  Json object;
  object["value"] = number(tidy(own.budget.value));
  object["unit"] = own.budget.unit;
  object["standard"] = number(own.budget.standard);
  object["expanded"] = number(own.budget.expanded);
  object["k"] = kCoverage;
  object["relative"] = number(own.budget.relative);
  object["budget"] = Json::array();
  for (const BudgetLine& line : own.budget.lines) object["budget"].push_back(budget_line(line));
  object["perfect_hands"] = {{"expanded", number(own.perfect_hands_expanded)}};
  return object;
}

Json split_object(const ResultSplit& split) {
  Json object;
  object["percent"] = number(split.percent);
  object["parts"] = Json::array();
  for (const ResultPart& part : split.parts) {
    object["parts"].push_back(
        {{"part", part.name},
         {"cause", part.cause ? Json(std::string(cause_id(*part.cause))) : Json(nullptr)},
         {"percent", number(part.percent)}});
  }
  return object;
}

Json next_object(const NextFix& fix) {
  Json object;
  object["id"] = fix.id;
  object["why"] = fix.why;
  object["advice"] = fix.advice;
  object["gain_cm3"] = number(fix.gain_cm3);
  object["marks"] = number(fix.marks);
  object["tick"] = fix.tick;
  return object;
}

}  // namespace

std::string marks_json(const MarkedAttempt& marked, const std::string& attempt_name,
                       const std::optional<FirstGo>& first_go) {
  Json object;
  object["attempt"] = attempt_name;
  object["level"] = marked.level_id;
  object["alias"] = marked.alias;
  object["way"] = std::string(way_name(marked.way));
  object["reproduced"] = marked.outcome.reproduced;
  object["titres"] = Json::array();
  for (const TitreRow& row : marked.titres)
    object["titres"].push_back(titre_object(row, marked.ideal_titres()));
  object["mean_titre_cm3"] = number(marked.mean_titre_cm3);
  object["ideal_titre_cm3"] = number(tidy(marked.ideal_titre_cm3));
  if (marked.ideal_first_titre_cm3) {
    object["mean_first_titre_cm3"] = number(marked.mean_first_titre_cm3);
    object["ideal_first_titre_cm3"] = number(tidy(*marked.ideal_first_titre_cm3));
  }
  object["concentration"] = {{"reported", number(marked.reported)},
                             {"true", number(tidy(marked.true_value))},
                             {"unit", marked.unit}};
  object["uncertainty"] = marked.uncertainty ? uncertainty_object(*marked.uncertainty) : Json(nullptr);
  object["marks"] = marks_object(marked.marks);
  object["findings"] = Json::array();
  for (const Finding& finding : marked.findings) object["findings"].push_back(finding_object(finding));
  object["result_split"] = marked.result_split ? split_object(*marked.result_split) : Json(nullptr);
  const std::optional<NextFix> next = next_fix(marked);
  object["next"] = next ? next_object(*next) : Json(nullptr);
  if (marked.drill) object["drill"] = drill_object(*marked.drill, first_go);
  // A file name or an alias may hold bytes that are not UTF-8.
  return json_text(object);
}

}  // namespace halfdrop
