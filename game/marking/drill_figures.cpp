// A drill's key figures, and two goes side by side.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/drill_marks.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

std::optional<double> count(int n) { return static_cast<double>(n); }

DrillFigure cm3(const char* id, Phrase title, std::optional<double> value, bool is_signed = false) {
  DrillFigure figure;
  figure.id = id;
  figure.title = title;
  figure.value = value;
  figure.is_signed = is_signed;
  return figure;
}

DrillFigure number(const char* id, Phrase title, std::optional<double> value) {
  DrillFigure figure = cm3(id, title, value);
  figure.decimals = 0;
  figure.is_cm3 = false;
  return figure;
}

std::vector<DrillFigure> figures_of(const ReadingDrill& drill) {
  const SampleStatistics& errors = drill.errors;
  const auto with_values = [&](int least, double value) {
    return errors.count >= least ? std::optional(value) : std::nullopt;
  };
  DrillFigure bias = cm3("bias_cm3", "figure.bias", with_values(1, errors.mean), true);
  bias.error = with_values(2, errors.mean_error);
  DrillFigure spread = cm3("sd_cm3", "figure.spread", with_values(2, errors.sd));
  spread.error = with_values(2, errors.sd_error);
  return {number("readings", "figure.readings", count(drill.read)), bias, spread,
          number("off_level", "figure.off_level", count(drill.off_level)),
          number("slips", "figure.slips", count(drill.slips))};
}

std::vector<DrillFigure> figures_of(const DeliveryDrill& drill) {
  std::optional<double> worst_volume, worst_drop;
  int closed = 0;
  for (const VolumeDelivered& volume : drill.volumes) {
    if (!volume.delivered_cm3) continue;
    ++closed;
    auto& worst = volume.asked.what == Delivery::What::volume ? worst_volume : worst_drop;
    if (!worst || std::fabs(*volume.error_cm3()) > std::fabs(*worst)) worst = volume.error_cm3();
  }
  return {number("delivered", "figure.delivered", count(closed)),
          cm3("worst_volume_cm3", "figure.worst_volume", worst_volume, true),
          cm3("worst_drop_cm3", "figure.worst_drop", worst_drop, true)};
}

std::vector<DrillFigure> figures_of(const FillingDrill& drill) {
  const auto seen = [&](double value) { return drill.looked ? std::optional(value) : std::nullopt; };
  return {cm3("jet_air_cm3", "figure.jet_air", seen(drill.jet_air_cm3)),
          cm3("funnel_cm3", "figure.funnel", seen(drill.funnel_cm3)),
          cm3("hanging_cm3", "figure.hanging", seen(drill.hanging_cm3)),
          cm3("reading_error_cm3", "figure.reading_error", drill.error_cm3(), true),
          cm3("spilt_cm3", "figure.spilt", drill.spilt_cm3)};
}

std::vector<DrillFigure> figures_of(const KnowingDrill& drill) {
  return {number("pieces_known", "figure.pieces_known", count(drill.known())),
          number("wrong_answers", "figure.wrong_answers", count(drill.wrong())),
          number("pieces_used", "figure.pieces_used", count(drill.used()))};
}

bool only_counts(const DrillFigure& figure) {
  return figure.id == "readings" || figure.id == "delivered" || figure.id == "pieces_known" ||
         figure.id == "pieces_used";
}

/// A difference of figures with standard errors is told from chance by theirs together.
std::string verdict(const DrillFigure& first, const DrillFigure& second) {
  if (!first.value || !second.value || only_counts(first)) return {};
  const double before = std::fabs(*first.value), after = std::fabs(*second.value);
  const double half_unit = 0.5 * std::pow(10.0, -first.decimals);
  if (first.error && second.error) {
    const double error = std::hypot(*first.error, *second.error);
    const double change = first.is_signed ? *second.value - *first.value : after - before;
    if (std::fabs(change) <= kSeenErrors * error) return say("figure.no_change");
  } else if (std::fabs(after - before) < half_unit) {
    return say("figure.same");
  }
  return after < before ? say("figure.nearer") : say("figure.further");
}

}  // namespace

std::vector<DrillFigure> key_figures(const DrillFigures& drill) {
  return std::visit([](const auto& one) { return figures_of(one); }, drill);
}

DrillKind kind_of(const DrillFigures& drill) {
  if (std::holds_alternative<ReadingDrill>(drill)) return DrillKind::read_meniscus;
  if (std::holds_alternative<KnowingDrill>(drill)) return DrillKind::know_apparatus;
  return std::holds_alternative<DeliveryDrill>(drill) ? DrillKind::deliver_exactly
                                                      : DrillKind::fill_without_air;
}

std::vector<std::string> key_figure_ids() {
  std::vector<std::string> ids;
  for (const DrillFigures& empty : {DrillFigures(ReadingDrill{}), DrillFigures(DeliveryDrill{}),
                                    DrillFigures(FillingDrill{}), DrillFigures(KnowingDrill{})}) {
    for (const DrillFigure& figure : key_figures(empty)) ids.push_back(figure.id);
  }
  return ids;
}

std::string figure_words(const DrillFigure& figure) {
  if (!figure.value) return "-";
  if (!figure.is_cm3) return figure_text(*figure.value, figure.decimals);
  std::string words = figure.is_signed ? signed_cm3_text(*figure.value, figure.decimals)
                                       : cm3_text(*figure.value, figure.decimals);
  if (figure.error) words += " ± " + figure_text(*figure.error, figure.decimals);
  return words;
}

bool same_drill(const Attempt& one, const Attempt& other) {
  const auto &drill = one.level.drill, &before = other.level.drill;
  return one.alias == other.alias && one.level.id == other.level.id && drill && before &&
         drill->kind == before->kind && drill->to_cm3 == before->to_cm3 &&
         drill->deliveries.size() == before->deliveries.size();
}

std::vector<FigureChange> compare_goes(const DrillFigures& first, const DrillFigures& second) {
  const std::vector<DrillFigure> before = key_figures(first), after = key_figures(second);
  std::vector<FigureChange> changes;
  for (std::size_t i = 0; i < before.size(); ++i)
    changes.push_back({before[i], after[i], verdict(before[i], after[i])});
  return changes;
}

}  // namespace halfdrop
