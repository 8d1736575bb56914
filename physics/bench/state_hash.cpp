#include "physics/bench/state_hash.h"

#include <bit>
#include <cstdint>

namespace halfdrop {

namespace {

class Fnv1a {
 public:
  void add(std::uint64_t value) {
    for (int i = 0; i < 8; ++i) {
      hash_ ^= (value >> (8 * i)) & 0xffU;
      hash_ *= 0x100000001b3ULL;
    }
  }
  void add(std::int64_t value) { add(static_cast<std::uint64_t>(value)); }
  void add(double value) { add(std::bit_cast<std::uint64_t>(value == 0.0 ? 0.0 : value)); }
  void add(bool value) { add(std::uint64_t{value}); }
  void add(const Parcel& parcel) {
    add(parcel.volume);
    for (const Quanta amount : parcel.amounts) add(amount);
  }
  [[nodiscard]] std::string text() const {
    static constexpr char kDigits[] = "0123456789abcdef";
    std::string out(16, '0');
    for (std::size_t i = 0; i < 16; ++i) out[i] = kDigits[(hash_ >> (60 - 4 * i)) & 0xfU];
    return out;
  }

 private:
  std::uint64_t hash_ = 0xcbf29ce484222325ULL;
};

void add_ledger(Fnv1a& hash, const Ledger& ledger) {
  for (std::size_t from = 0; from < kAccounts; ++from) {
    hash.add(ledger.balance(static_cast<Account>(from)));
    for (std::size_t to = 0; to < kAccounts; ++to) {
      hash.add(ledger.moved(static_cast<Account>(from), static_cast<Account>(to)));
    }
  }
}

void add_hands(Fnv1a& hash, const Hands& hands) {
  for (const double value :
       {hands.tap, hands.eye_mm, hands.flask_x_cm, hands.flask_y_cm, hands.swirl, hands.wash, hands.pour,
        hands.tilt_degrees, hands.card_mm, hands.clamp_mm, hands.valve, hands.tip, hands.fill}) {
    hash.add(value);
  }
}

void add_flask(Fnv1a& hash, const FlaskLiquid& flask) {
  for (const CellField& field : flask.field) {
    hash.add(static_cast<std::uint64_t>(field.size()));
    for (const double cell : field) hash.add(cell);
  }
  for (const Parcel& parcel : {flask.titrant, flask.water, flask.indicator, flask.second_indicator})
    hash.add(parcel);
  for (const Arrival& arrival : {flask.drops, flask.washings, flask.tint, flask.second_tint}) {
    hash.add(arrival.liquid);
    hash.add(arrival.x_cm);
    hash.add(arrival.momentum_g_cm_s);
  }
  hash.add(flask.laid_out);
  hash.add(static_cast<std::uint64_t>(flask.flow.vorticity.size()));
  for (const float node : flask.flow.vorticity) hash.add(static_cast<double>(node));
  hash.add(flask.spin_rad_s);
  hash.add(flask.impact_erg);
}

void add_wall(Fnv1a& hash, const FlaskWall& wall) {
  for (const ClingingDrop& drop : wall.drops) {
    hash.add(drop.liquid);
    hash.add(drop.side);
    hash.add(drop.height_cm);
  }
  for (const Trail& trail : wall.trail)
    for (const Parcel& length : trail) hash.add(length);
}

void add_slosh(Fnv1a& hash, const Slosh& slosh) {
  for (const double value : {slosh.turns, slosh.reach_cm, slosh.wave_cm, slosh.beyond, slosh.waits_cm3})
    hash.add(value);
}

}  // namespace

// A field more or less changes one of these: add it to the hash (and to its test), then put the new size
// here.
static_assert(sizeof(Parcel) == (1 + kComponents) * sizeof(Quanta));
static_assert(sizeof(Ledger) == (1 + kAccounts) * kAccounts * sizeof(Parcel));
static_assert(sizeof(Hands) == 13 * sizeof(double));
static_assert(sizeof(FallingDrop) == sizeof(Parcel) + 5 * sizeof(double));  // the flag takes a whole word
static_assert(sizeof(Arrival) == sizeof(Parcel) + 2 * sizeof(double));
static_assert(sizeof(FlaskLiquid) == (kSources + 1) * sizeof(CellField) + 4 * sizeof(Parcel) +
                                         4 * sizeof(Arrival) + sizeof(Quanta) + 2 * sizeof(double));
static_assert(sizeof(FlaskWall) ==
              kMostClinging * (sizeof(Parcel) + 2 * sizeof(double)) + 2 * kTrailLengths * sizeof(Parcel));
static_assert(sizeof(Slosh) == 5 * sizeof(double));
static_assert(sizeof(Preparation) == sizeof(Parcel) + 3 * sizeof(double));
static_assert(sizeof(WallFilm) == 2 * kFilmLengths * sizeof(Quanta));
static_assert(sizeof(BenchState) == sizeof(Ledger) + sizeof(WallFilm) + sizeof(FlaskLiquid) +
                                        sizeof(FlaskWall) + sizeof(Slosh) + sizeof(Hands) +
                                        kMostFalling * sizeof(FallingDrop) + 5 * sizeof(Tick) +
                                        2 * sizeof(Quanta) + sizeof(Preparation) + sizeof(double) +
                                        8);  // six flags, a bottle and a place in eight bytes

std::string state_hash(const BenchState& state) {
  Fnv1a hash;
  hash.add(state.tick);
  add_ledger(hash, state.ledger);
  for (const auto& kind : {state.film.runs, state.film.greasy})
    for (const Quanta volume : kind) hash.add(volume);
  add_flask(hash, state.flask);
  add_wall(hash, state.wall);
  add_slosh(hash, state.slosh);
  add_hands(hash, state.hands);
  hash.add(state.plug);
  hash.add(state.jet_below);
  for (const bool flag : {state.coat_on, state.goggles_on, state.funnel_in, state.beaker_under,
                          state.tile_laid, state.over_edge}) {
    hash.add(flag);
  }
  hash.add(static_cast<std::uint64_t>(state.in_hand));
  hash.add(static_cast<std::uint64_t>(state.pipette_place));
  hash.add(state.pipette_air);
  hash.add(state.funnel_drip_due);
  hash.add(state.jet_freed_until);
  hash.add(state.drill_step);
  hash.add(state.drop_falls_at);
  for (const FallingDrop& drop : state.falling) {
    hash.add(drop.flying);
    hash.add(drop.liquid);
    hash.add(drop.x_cm);
    hash.add(drop.fallen_cm);
    hash.add(drop.across_cm_s);
    hash.add(drop.speed_cm_s);
  }
  hash.add(state.preparation.on_top);
  hash.add(state.preparation.loosened_g);
  hash.add(state.preparation.lumps);
  hash.add(state.preparation.inversions);
  return hash.text();
}

}  // namespace halfdrop
