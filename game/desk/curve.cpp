#include <array>
#include <charconv>
#include <cmath>
#include <ostream>
#include <string_view>

#include "game/desk/commands.h"
#include "game/desk/titration_curve.h"
#include "game/records/curve_json.h"

namespace halfdrop::desk {

namespace {

/// What rounds to nothing has no sign.
std::string fixed(double value, int decimals) {
  std::array<char, 64> text{};
  const auto result =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
  const std::string_view written(text.data(), static_cast<std::size_t>(result.ptr - text.data()));
  const bool nothing = written.find_first_not_of("-0.") == std::string_view::npos;
  return std::string(nothing && written.starts_with('-') ? written.substr(1) : written);
}

/// Shortest: "12.5", "0".
std::string plain(double value) {
  std::array<char, 64> text{};
  const auto result = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  return {text.data(), result.ptr};
}

void print_csv(const Curve& curve, const Titration& titration, Streams streams) {
  StrongestSolution strongest;
  streams.out << "volume_cm3,pH,colour\n";
  for (const double volume_cm3 : curve.volumes_cm3) {
    const CurvePoint point = point_at(curve, titration, volume_cm3);
    strongest.see(volume_cm3, point.ionic_strength_mol_dm3);
    streams.out << plain(volume_cm3) << ',' << fixed(point.ph, 4) << ',' << point.colour << '\n';
  }
  if (const auto warning = strongest.warning(); warning && !curve.titration.solver.ideal)
    streams.err << "warning: " << *warning << '\n';
}

void report_equivalences(const Titration& titration, CurveReport& report) {
  for (const double volume_cm3 : titration.equivalences_cm3()) {
    const double jump = titration.at(1.02 * volume_cm3).ph - titration.at(0.98 * volume_cm3).ph;
    report.equivalences.push_back({volume_cm3, titration.at(volume_cm3).ph, std::abs(jump)});
  }
}

std::string why_unfit(const std::string& indicator, const VisibleChange& change, const Fitness& fitness) {
  const double away = change.middle_cm3 - fitness.equivalence_cm3;
  return indicator + " does not fit this titration: half its change is over at " +
         fixed(change.middle_cm3, 2) + " cm3, " + fixed(std::abs(away), 2) + " cm3 " +
         (away < 0.0 ? "before" : "past") + " the nearest equivalence, at " +
         fixed(fitness.equivalence_cm3, 2) + " cm3";
}

void report_indicator(const Indicator& indicator, const Titration& titration, CurveReport& report) {
  report.indicator = indicator.name;
  for (const ColourRange& range : indicator.ranges) report.handbook.push_back({range.low_ph, range.high_ph});
  for (const Vision vision : kVisions) {
    const auto change = titration.visible_change({Backdrop::white_tile, vision});
    if (change)
      report.changes.push_back({name_of(vision), change->first_cm3, change->middle_cm3, change->last_cm3});
    if (vision != Vision::normal) continue;
    if (!change) {
      report.unfit = true;
      report.warnings.push_back(indicator.name + " does not fit this titration: " +
                                (report.equivalences.empty() ? "there is no equivalence that it could show"
                                                             : "it shows no change"));
      continue;
    }
    const Fitness fitness = fitness_of(*change, titration.equivalences_cm3());
    report.unfit = !fitness.fit;
    if (!fitness.fit) report.warnings.push_back(why_unfit(indicator.name, *change, fitness));
  }
}

std::string why_no_equivalence(const TitrationSpec& spec) {
  const auto water = [](const std::string& place, const Substance& substance, const std::string& so) {
    return "the " + place + " holds water only (" + substance.name + " of 0 mol/dm3): " + so;
  };
  if (spec.burette_mol_dm3 == 0.0) return water("burette", spec.burette, "nothing is titrated");
  if (spec.flask_mol_dm3 == 0.0) return water("flask", spec.flask, "there is nothing to titrate");
  return spec.burette.name + " and " + spec.flask.name + " do not neutralise one another";
}

CurveReport report_on(const Curve& curve, const Titration& titration) {
  const TitrationSpec& spec = curve.titration;
  CurveReport report;
  report.flask = {spec.flask.name, spec.flask_mol_dm3};
  report.burette = {spec.burette.name, spec.burette_mol_dm3};
  report.aliquot_cm3 = spec.aliquot_cm3;
  report.temperature_c = spec.solver.temperature_c;
  report.pkw = spec.solver.pkw;
  report.ideal = spec.solver.ideal;
  report.drops = spec.drops;
  report_equivalences(titration, report);
  if (report.equivalences.empty()) report.warnings.push_back(why_no_equivalence(spec));
  if (spec.indicator) report_indicator(*spec.indicator, titration, report);
  StrongestSolution strongest;
  for (const double volume_cm3 : curve.volumes_cm3) {
    CurvePoint point = point_at(curve, titration, volume_cm3);
    strongest.see(volume_cm3, point.ionic_strength_mol_dm3);
    report.points.push_back({volume_cm3, point.ph, std::move(point.colour)});
  }
  if (const auto warning = strongest.warning(); warning && !spec.solver.ideal)
    report.warnings.push_back(*warning);
  return report;
}

}  // namespace

int print_curve(const CurveOptions& options, Streams streams) {
  const auto curve = curve_from(options);
  if (!curve) {
    const CurveFault& fault = curve.error();
    if (!fault.option.empty()) return wrong_argument(fault.option, fault.message, streams);
    return report(fault.faults, streams);
  }
  const Titration titration(curve->titration);
  if (options.json)
    streams.out << curve_json(report_on(*curve, titration)) << '\n';
  else
    print_csv(*curve, titration, streams);
  return kDone;
}

}  // namespace halfdrop::desk
