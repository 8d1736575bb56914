#include <array>
#include <charconv>
#include <ostream>
#include <string_view>

#include "game/desk/commands.h"
#include "game/desk/titration_curve.h"
#include "game/level/change_in_words.h"
#include "game/records/curve_json.h"
#include "physics/flask/visible_change.h"

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
  StrongestSolution strongest(titration);
  streams.out << "volume_cm3,pH,colour\n";
  for (const double volume_cm3 : curve.volumes_cm3) {
    const CurvePoint point = point_at(curve, titration, volume_cm3);
    strongest.see(volume_cm3, point.ionic_strength_mol_dm3);
    streams.out << plain(volume_cm3) << ',' << fixed(point.ph, 4) << ',' << point.colour << '\n';
  }
  std::vector<std::string> warnings = warnings_about(curve, titration);
  if (const auto warning = strongest.warning(); warning && !curve.titration.solver.ideal)
    warnings.push_back(*warning);
  for (const std::string& warning : warnings) streams.err << "warning: " << warning << '\n';
}

void report_equivalences(const Titration& titration, CurveReport& report) {
  for (const Equivalence& at : titration.equivalences())
    report.equivalences.push_back({at.volume_cm3, at.ph, at.jump_ph});
}

std::string_view name_of(Sight sight) {
  return sight == Sight::first ? "first" : sight == Sight::last ? "last" : "middle";
}

void report_indicator(const Indicator& indicator, const Titration& titration, CurveReport& report) {
  report.indicator = indicator.name;
  for (const ColourRange& range : indicator.ranges) report.handbook.push_back({range.low_ph, range.high_ph});
  for (const Vision vision : kVisions) {
    const auto changes = visible_changes(titration, {Backdrop::white_tile, vision});
    for (const VisibleChange& change : changes) {
      report.changes.push_back({name_of(vision), change.first_cm3, change.middle_cm3, change.last_cm3,
                                name_of(change.endpoint), change.endpoint_cm3(), change.nearest.volume_cm3,
                                change.fit == Fit::fits, change.gradual()});
    }
    if (vision != Vision::normal) {
      const bool fits = !changes.empty() && best_of(changes).fit == Fit::fits;
      if (!report.unfit && !fits)
        report.warnings.push_back(indicator.name + " does not show this endpoint to " +
                                  std::string(name_of(vision)) + " colour vision");
      continue;
    }
    report.unfit = changes.empty() || best_of(changes).fit != Fit::fits;
    if (!changes.empty()) report.visible_change_cm3 = best_of(changes).endpoint_cm3();
    if (std::string warning = warning_about(titration, changes); !warning.empty())
      report.warnings.push_back(std::move(warning));
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
  report.flask = {spec.flask.name, spec.flask_mol_dm3, curve.given_pka};
  report.burette = {spec.burette.name, spec.burette_mol_dm3, {}};
  report.aliquot_cm3 = spec.aliquot_cm3;
  report.temperature_c = spec.solver.temperature_c;
  report.pkw = spec.solver.pkw;
  report.ideal = spec.solver.ideal;
  report.drops = spec.drops;
  report_equivalences(titration, report);
  if (report.equivalences.empty()) report.warnings.push_back(why_no_equivalence(spec));
  if (spec.indicator) report_indicator(*spec.indicator, titration, report);
  for (std::string& warning : warnings_about(curve, titration)) report.warnings.push_back(std::move(warning));
  StrongestSolution strongest(titration);
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
