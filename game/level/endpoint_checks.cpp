#include "game/level/endpoint_checks.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "game/level/change_in_words.h"
#include "game/level/fields.h"
#include "game/level/ionic_strength.h"
#include "physics/chemistry/equivalence.h"
#include "physics/flask/contents.h"
#include "physics/flask/visible_change.h"

namespace halfdrop {

namespace {

/// An endpoint further from equivalence than this is worth a warning: two drops (our own choice).
constexpr double kFarOff_cm3 = 0.1;
/// A ratio further off than this share is none that the substances have; one of three figures (0.333) is.
constexpr double kRatioOff = 0.002;
constexpr int kDrops = 3;

class EndpointCheck {
 public:
  EndpointCheck(const Level& level, const std::string& file) : level_(level), file_(file) {
    const auto middle = [](const Range& range) { return 0.5 * (range.low + range.high); };
    spec_ = drawn_bench_spec(level, 1);
    if (level.unknown_in_flask) {
      const double sample_mol_dm3 = middle(level.sample.unknown_mol_dm3);
      const double second_mol_dm3 =
          level.then && level.then->beside ? middle(level.then->beside->mol_dm3) : 0.0;
      spec_.sample = bottle_of(sample_holding(level, second_mol_dm3), level.sample_substance, sample_mol_dm3);
      if (level.then)
        spec_.then->titrant_per_analyte = ratio_at_second(*level.then, sample_mol_dm3, second_mol_dm3);
    } else {
      spec_.titrant =
          bottle_of(level.titrant, level.titrant_substance, middle(level.titrant.unknown_mol_dm3));
    }
    settle(spec_);
  }

  EndpointChecks run() {
    found_.warnings = warnings_of_ionic_strength(level_, file_);
    labels();
    if (jump() && ratio()) colour();
    if (!level_.then || !found_.faults.empty()) return std::move(found_);
    endpoint_ = Endpoint::second;
    if (jump() && ratios_of_second()) colour();
    return std::move(found_);
  }

 private:
  [[nodiscard]] bool second() const { return endpoint_ == Endpoint::second; }
  /// A key's place, of the endpoint that is looked at.
  [[nodiscard]] std::string at(const char* key) const { return (second() ? "/then" : "") + std::string(key); }
  [[nodiscard]] const std::string& indicator() const {
    return second() ? level_.then->indicator : level_.indicator;
  }

  void fault(const std::string& place, const std::string& message) {
    found_.faults.push_back({FaultKind::invalid, file_, place, message});
  }
  void warn(const std::string& place, const std::string& message) {
    found_.warnings.push_back({FaultKind::invalid, file_, place, message});
  }

  /// The flask with so much of the titrant that the ratio asks for.
  [[nodiscard]] Parcel flask_at(double share) const {
    const double titrant_cm3 = share * titre_cm3();
    const Parcel mixed = Parcel::solution(level_.aliquot_cm3, Component::analyte, spec_.sample.true_mol_dm3) +
                         Parcel::solution(titrant_cm3, Component::titrant, spec_.titrant.true_mol_dm3) +
                         Parcel::solution(kDrops * spec_.indicator_drop_cm3, Component::indicator,
                                          spec_.indicator.stock_mol_dm3);
    const Parcel more = !second()
                            ? Parcel{}
                            : Parcel::solution(kDrops * spec_.indicator_drop_cm3, Component::second_indicator,
                                               spec_.then->indicator.stock_mol_dm3);
    return without_carbon_dioxide(spec_, mixed + more);
  }

  bool jump() {
    const double before = equilibrium_of(spec_, flask_at(0.98), Hydration::complete).ph;
    const double past = equilibrium_of(spec_, flask_at(1.02), Hydration::complete).ph;
    if (std::fabs(past - before) >= kLeastJump) return true;
    const std::optional<Equivalence> nearest = second() ? std::nullopt : nearest_equivalence();
    const std::string advice = nearest && !is_titre(nearest->volume_cm3)
                                   ? "Instead, " + ratio_in_words(*nearest)
                                   : "Check the substances and the ratio";
    fault(at("/ratio"), level_.titrant.substance + " into " + level_.sample.substance +
                            " has no endpoint at this ratio: the pH goes from " + rounded(before) +
                            " only to " + rounded(past) + " around it. " + advice);
    return false;
  }

  void colour() {
    const Parcel equivalence = flask_at(1.0);
    if (!first_visible_change_cm3(spec_, equivalence, endpoint_)) {
      const auto changes = visible_changes(titration(), {});
      fault(at("/indicator"), indicator() + " shows no change within 10 cm3 past equivalence" +
                                  (changes.empty() ? "" : ": " + endpoint_in_words(best_of(changes))));
      return;
    }
    warn_of_indicator();
    if (second()) return;
    const bool colourless_before = chroma(flask_at(0.0)) < kColourless;
    const bool colourless_past = chroma(flask_at(1.05)) < kColourless;
    if (colourless_before == colourless_past) return;
    if (colourless_before == level_.endpoint_gains_colour) return;
    fault("/endpoint/gains_colour", std::string("expected ") + (colourless_before ? "true" : "false") + ": " +
                                        level_.indicator + " is " +
                                        (colourless_before ? "colourless before" : "colourless past") +
                                        " the endpoint of this titration");
  }

  /// The level's titration as a curve, with its unknown as it stands here.
  [[nodiscard]] Titration titration() const {
    TitrationSpec titration;
    titration.flask = level_.sample_substance;
    titration.burette = level_.titrant_substance;
    titration.beside_flask = beside();
    titration.beside_burette = level_.titrant.also;
    titration.flask_mol_dm3 = spec_.sample.true_mol_dm3;
    titration.burette_mol_dm3 = spec_.titrant.true_mol_dm3;
    titration.aliquot_cm3 = level_.aliquot_cm3;
    titration.indicator = second() ? level_.then->indicator_data : level_.indicator_data;
    if (second()) titration.equivalence_cm3 = titre_cm3();
    titration.drops = kDrops;
    titration.drop_cm3 = spec_.indicator_drop_cm3;
    titration.glass = spec_.flask;
    titration.solver = solver_options(spec_);
    return Titration(titration);
  }

  /// What the level's ratio asks for.
  [[nodiscard]] double titre_cm3() const {
    return spec_.titrant_per_analyte_at(endpoint_) * spec_.sample.true_mol_dm3 * level_.aliquot_cm3 /
           spec_.titrant.true_mol_dm3;
  }
  [[nodiscard]] bool is_titre(double volume_cm3) const {
    return std::fabs(volume_cm3 - titre_cm3()) <= kRatioOff * volume_cm3;
  }

  [[nodiscard]] std::optional<Equivalence> nearest_equivalence() const {
    const std::vector<Equivalence> all = titration().equivalences();
    const auto away = [&](const Equivalence& at) { return std::fabs(at.volume_cm3 - titre_cm3()); };
    const auto nearest = std::min_element(all.begin(), all.end(),
                                          [&](const auto& a, const auto& b) { return away(a) < away(b); });
    return nearest == all.end() ? std::nullopt : std::optional(*nearest);
  }
  /// "the nearest equivalence is at a ratio of 1, found 1.01".
  [[nodiscard]] std::string ratio_in_words(const Equivalence& nearest) const {
    return "the nearest equivalence is at a ratio of " +
           rounded(level_.ratio * nearest.volume_cm3 / titre_cm3()) + ", found " + number_text(level_.ratio);
  }

  /// Whether the ratio is that of an equivalence.
  bool ratio() {
    const std::optional<Equivalence> nearest = nearest_equivalence();
    if (!nearest || is_titre(nearest->volume_cm3)) return true;
    fault("/ratio", ratio_in_words(*nearest) + ": every titre would seem " +
                        where(std::fabs(nearest->volume_cm3 - titre_cm3())) + " off");
    return false;
  }

  /// Whether each substance of the second endpoint has an equivalence at its own ratio.
  bool ratios_of_second() {
    const auto has = [&](const Substance& substance, double ratio) {
      const std::vector<double> all = equivalence_ratios(substance, level_.titrant_substance);
      return std::any_of(all.begin(), all.end(),
                         [&](double one) { return std::fabs(one - ratio) <= kRatioOff * one; });
    };
    const auto say = [&](const std::string& place, const std::string& name, double ratio) {
      fault(place, name + " has no equivalence with " + level_.titrant.substance + " at a ratio of " +
                       number_text(ratio));
    };
    const TitratedOn& then = *level_.then;
    const bool sample = has(level_.sample_substance, then.ratio);
    if (!sample) say("/then/ratio", level_.sample.substance, then.ratio);
    if (!then.beside || has(then.beside->substance, then.beside->ratio)) return sample;
    say("/then/beside/ratio", then.beside->name, then.beside->ratio);
    return false;
  }

  /// No fault: a level may be about the wrong indicator.
  void warn_of_indicator() {
    const Titration whole = titration();
    const std::string place = at("/indicator");
    auto changes = visible_changes(whole, {});
    const auto elsewhere = [&](const VisibleChange& change) { return !is_titre(change.nearest.volume_cm3); };
    if (std::all_of(changes.begin(), changes.end(), elsewhere)) {
      warn(place, indicator() + " does not show the equivalence that is meant, at " + where(titre_cm3()) +
                      (changes.empty() ? "" : ": " + endpoint_in_words(best_of(changes))));
      return;
    }
    std::erase_if(changes, elsewhere);
    const VisibleChange& best = best_of(changes);
    if (const std::string warning = warning_about(whole, changes); !warning.empty())
      warn(place, warning);
    else if (std::fabs(best.endpoint_cm3() - best.nearest.volume_cm3) > kFarOff_cm3)
      warn(place, indicator() + " is off: " + endpoint_in_words(best));
  }

  /// What else is in the sample.
  [[nodiscard]] std::vector<Beside> beside() const {
    const double second_mol_dm3 = !level_.then || !level_.then->beside
                                      ? 0.0
                                      : (spec_.then->titrant_per_analyte - level_.then->ratio) *
                                            spec_.sample.true_mol_dm3 / level_.then->beside->ratio;
    return sample_holding(level_, second_mol_dm3).also;
  }

  [[nodiscard]] double chroma(const Parcel& liquid) const {
    const double path_cm = sight_path_cm(spec_.flask, liquid.volume_cm3());
    const Lab seen = to_lab(colour_of(spec_, liquid, path_cm, Backdrop::white_tile, Hydration::complete));
    const Lab tile = to_lab(colour_of(spec_, Parcel{}, path_cm, Backdrop::white_tile));
    return std::hypot(seen.a - tile.a, seen.b - tile.b);
  }

  void labels() {
    const LiquidSpec& standard = level_.unknown_in_flask ? level_.titrant : level_.sample;
    const std::string place = level_.unknown_in_flask ? "/titrant/label" : "/sample/label";
    const std::optional<double> label = strength_on(standard.label);
    if (!label || std::fabs(*label - standard.label_mol_dm3) <= 0.005 * standard.label_mol_dm3) return;
    fault(place, "the label says " + rounded(*label) + " mol dm-3, but mol_dm3 is " +
                     number_text(standard.label_mol_dm3));
  }

  /// The number before "mol" on a label; nothing where there is none.
  static std::optional<double> strength_on(const std::string& label) {
    const std::size_t unit = label.find("mol");
    if (unit == std::string::npos) return std::nullopt;
    const std::size_t last = label.find_last_of("0123456789", unit);
    if (last == std::string::npos) return std::nullopt;
    const std::size_t before = label.find_last_not_of("0123456789.,", last);
    std::string figure = label.substr(before == std::string::npos ? 0 : before + 1, last + 1 - (before + 1));
    while (figure.starts_with(',') || figure.starts_with('.')) figure.erase(0, 1);
    if (const std::size_t comma = figure.find(','); comma != std::string::npos) figure[comma] = '.';
    double value = 0.0;
    const auto [end, error] = std::from_chars(figure.data(), figure.data() + figure.size(), value);
    if (error != std::errc() || end != figure.data() + figure.size()) return std::nullopt;
    return value;
  }

  static std::string rounded(double value) { return number_text(std::round(value * 1000.0) / 1000.0); }

  const Level& level_;
  std::string file_;
  BenchSpec spec_;
  Endpoint endpoint_ = Endpoint::first;  ///< that is looked at
  EndpointChecks found_;
};

}  // namespace

EndpointChecks check_endpoint(const Level& level, const std::string& file) {
  return EndpointCheck(level, file).run();
}

}  // namespace halfdrop
