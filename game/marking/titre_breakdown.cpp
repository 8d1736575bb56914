#include "game/marking/titre_breakdown.h"

#include <algorithm>
#include <cmath>

#include "physics/burette/column.h"
#include "physics/burette/wall_film.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

/// What moved between the readings.
class Between {
 public:
  Between(const Ledger& initial, const Ledger& final) : initial_(initial), final_(final) {}

  [[nodiscard]] Parcel moved(Account from, Account to) const {
    return final_.moved(from, to) - initial_.moved(from, to);
  }
  [[nodiscard]] double change_cm3(Account account) const { return change(account).volume_cm3(); }
  [[nodiscard]] Parcel change(Account account) const {
    return final_.balance(account) - initial_.balance(account);
  }

 private:
  const Ledger& initial_;
  const Ledger& final_;
};

struct ReadingError {
  double rounding = 0.0, misreading = 0.0, edge = 0.0;
};

double nearest_mark(double seen_cm3) { return std::round(seen_cm3 / 0.05) * 0.05; }

ReadingError reading_error(const ReadingMoment& moment) {
  ReadingError error;
  if (reading_allowed(moment.written_cm3, moment.apparent_cm3)) {
    error.rounding = moment.written_cm3 - moment.apparent_cm3;
  } else if (reading_allowed(moment.written_cm3, moment.apparent_edge_cm3)) {
    error.edge = moment.apparent_edge_cm3 - moment.apparent_cm3;
    error.rounding = moment.written_cm3 - moment.apparent_edge_cm3;
  } else {
    error.rounding = nearest_mark(moment.apparent_cm3) - moment.apparent_cm3;
    error.misreading = moment.written_cm3 - nearest_mark(moment.apparent_cm3);
  }
  return error;
}

double scale_cm3(const BenchSpec& spec, const ReadingMoment& moment) {
  return scale_reading_cm3(spec.burette, moment.bench.ledger.balance(Account::column).volume_cm3());
}

class Breaker {
 public:
  Breaker(const BenchSpec& spec, const ReadingMoment& initial, const ReadingMoment& final, Endpoint endpoint,
          TitreBreakdown& out)
      : spec_(spec),
        initial_(initial),
        final_(final),
        endpoint_(endpoint),
        between_(initial.bench.ledger, final.bench.ledger),
        c_mol_cm3_(spec.breakdown_mol_dm3() / 1000.0),
        out_(out) {}

  /// From the written figures to what left the column.
  void readings() {
    const ReadingError first = reading_error(initial_);
    const ReadingError last = reading_error(final_);
    set(Cause::rounding, last.rounding - first.rounding);
    set(Cause::misreading, last.misreading - first.misreading);
    set(Cause::meniscus_edge, last.edge - first.edge);
    const double true_first = scale_cm3(spec_, initial_);
    const double true_last = scale_cm3(spec_, final_);
    set(Cause::parallax_initial, -(initial_.apparent_cm3 - true_first));
    set(Cause::parallax_final, final_.apparent_cm3 - true_last);
    const double allowed =
        film_allowed_cm3(spec_.burette, true_last) - film_allowed_cm3(spec_.burette, true_first);
    set(Cause::burette_scale, (true_last - true_first) + between_.change_cm3(Account::column) + allowed);
    set(Cause::film, between_.change_cm3(Account::wall_film) - allowed);
  }

  /// From the column to what left the tip.
  void burette() {
    double poured = 0.0;
    for (const Account bottle : {Account::titrant_bottle, Account::sample_bottle, Account::wash_bottle})
      poured += between_.moved(bottle, Account::column).volume_cm3();
    const double dripped = between_.moved(Account::funnel, Account::column).volume_cm3();
    const double ran_over = between_.moved(Account::column, Account::bench_top).volume_cm3();
    const double poured_over =
        std::min(ran_over, std::max(poured, 0.0));  // what ran over was poured, before it was a drip
    set(Cause::refill, -(poured - poured_over));
    set(Cause::funnel_drips, -(dripped - (ran_over - poured_over)));
    set(Cause::leak, between_.moved(Account::column, Account::plug_drop).volume_cm3());
    set(Cause::jet_air, between_.change_cm3(Account::jet));
    set(Cause::hanging_drop,
        between_.change_cm3(Account::pendant_drop) + between_.change_cm3(Account::in_flight));
  }

  /// From what hung or fell to the flask's liquid, in equivalents of the titrant of T*.
  void way_down(const FlaskStory& story) {
    const Parcel touched_wall = between_.moved(Account::pendant_drop, Account::flask_wall);
    const Parcel into_beaker = between_.moved(Account::pendant_drop, Account::beaker) +
                               between_.moved(Account::in_flight, Account::beaker);
    const Parcel beside = between_.moved(Account::in_flight, Account::bench_top);
    const Parcel tipped_out = between_.moved(Account::column, Account::sink);
    const Parcel arrived = between_.moved(Account::in_flight, Account::flask) +
                           between_.moved(Account::in_flight, Account::flask_wall) + touched_wall +
                           into_beaker + beside + tipped_out;
    set(Cause::titrant_strength, arrived.volume_cm3() - equivalents(arrived));
    set(Cause::missed_flask, equivalents(into_beaker + beside + tipped_out + story.poured_away));
    set(Cause::flask_wall, equivalents(between_.change(Account::flask_wall)));
  }

  /// From what entered the flask's liquid to the endpoint.
  void flask(double nominal_aliquot_cm3, const FlaskStory& story) {
    const Parcel liquid = flask_liquid(final_.bench.ledger);
    const double nu = spec_.titrant_per_analyte_at(endpoint_);
    const Parcel entered =
        into_the_flask(final_.bench.ledger) - into_the_flask(initial_.bench.ledger) - story.poured_away;
    const double delivered_mol = story.from_pipette.amount_mol(Component::analyte);
    const double nominal_mol = spec_.sample_in_titre_mol_dm3() * nominal_aliquot_cm3 / 1000.0;
    set(Cause::aliquot, nu * (delivered_mol - nominal_mol) / c_mol_cm3_);
    const Parcel kept = liquid + story.lost;
    set(Cause::flask_residue, -equivalents(kept - entered) - nu * delivered_mol / c_mol_cm3_);
    set(Cause::swirled_out, equivalents(story.lost));
    const double excess_cm3 = excess_titrant_mol(spec_, liquid, endpoint_) / c_mol_cm3_;
    const double blank_cm3 =
        first_visible_change_cm3(spec_, without_carbon_dioxide(spec_, liquid), endpoint_).value_or(0.0);
    const double change_cm3 = first_visible_change_cm3(spec_, liquid, endpoint_).value_or(blank_cm3);
    set(Cause::indicator_blank, blank_cm3);
    set(Cause::carbon_dioxide, change_cm3 - blank_cm3);
    set(Cause::overshoot, excess_cm3 - change_cm3);
  }

 private:
  void set(Cause cause, double cm3) { out_.causes_cm3[static_cast<std::size_t>(cause)] = cm3; }
  /// Titrant over and above what its analyte takes: a wrong liquid in the burette brings both.
  [[nodiscard]] double equivalents(const Parcel& parcel) const {
    const double nu = spec_.titrant_per_analyte_at(endpoint_);
    return (parcel.amount_mol(Component::titrant) - nu * parcel.amount_mol(Component::analyte)) / c_mol_cm3_;
  }

  const BenchSpec& spec_;
  const ReadingMoment& initial_;
  const ReadingMoment& final_;
  Endpoint endpoint_;
  Between between_;
  double c_mol_cm3_;
  TitreBreakdown& out_;
};

}  // namespace

std::string_view cause_id(Cause cause) {
  static constexpr std::array<std::string_view, kCauses> kIds = {
      "rounding",      "misreading",    "meniscus_edge", "parallax_initial", "parallax_final",
      "burette_scale", "film",          "jet_air",       "hanging_drop",     "funnel_drips",
      "refill",        "leak",          "missed_flask",  "flask_wall",       "titrant_strength",
      "aliquot",       "flask_residue", "swirled_out",   "indicator_blank",  "carbon_dioxide",
      "overshoot"};
  return kIds[static_cast<std::size_t>(cause)];
}

Parcel into_the_flask(const Ledger& books) {
  return books.moved(Account::in_flight, Account::flask) + books.moved(Account::flask_wall, Account::flask);
}

bool reading_allowed(double written_cm3, double seen_cm3) {
  constexpr double kTiny_cm3 = 1e-9;
  const double twentieths = written_cm3 / 0.05;
  if (std::fabs(twentieths - std::round(twentieths)) > 1e-6) return false;
  if (std::fabs(written_cm3 - seen_cm3) <= 0.025 + kTiny_cm3) return true;
  // Visibly between two marks the trade writes 5 (common practice).
  constexpr double kVisiblyOff_cm3 = 0.01;
  const double upper_mark = std::floor(seen_cm3 / 0.1) * 0.1;
  const double past = seen_cm3 - upper_mark;
  return past >= kVisiblyOff_cm3 && past <= 0.1 - kVisiblyOff_cm3 &&
         std::fabs(written_cm3 - (upper_mark + 0.05)) < kTiny_cm3;
}

double ideal_titre_cm3(const BenchSpec& spec, double aliquot_cm3, Endpoint endpoint) {
  return spec.titrant_per_analyte_at(endpoint) * spec.sample_in_titre_mol_dm3() * aliquot_cm3 /
         spec.breakdown_mol_dm3();
}

TitreBreakdown break_down(const BenchSpec& spec, double nominal_aliquot_cm3, const ReadingMoment& initial,
                          const ReadingMoment& final, const FlaskStory& story, Endpoint endpoint) {
  TitreBreakdown out;
  out.recorded_cm3 = final.written_cm3 - initial.written_cm3;
  out.ideal_cm3 = ideal_titre_cm3(spec, nominal_aliquot_cm3, endpoint);
  Breaker breaker(spec, initial, final, endpoint, out);
  breaker.readings();
  breaker.burette();
  breaker.way_down(story);
  breaker.flask(nominal_aliquot_cm3, story);
  double sum = 0.0;
  for (const double cause : out.causes_cm3) sum += cause;
  out.remainder_cm3 = out.recorded_cm3 - out.ideal_cm3 - sum;
  return out;
}

}  // namespace halfdrop
