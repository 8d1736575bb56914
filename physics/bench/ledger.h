#pragma once
// The double-entry account of every parcel of liquid on the bench. Liquid moves only by a transfer between
// two accounts; amounts are whole multiples of fixed power-of-two quanta, so the books balance to the last
// bit.

#include <array>
#include <cstddef>
#include <cstdint>

namespace halfdrop {

/// What a parcel holds besides water. Volumes add (no contraction on mixing: left out).
enum class Component : std::uint8_t {
  titrant,
  analyte,
  indicator,
  carbon_dioxide,   ///< dissolved, not yet met by water
  carbonate,        ///< hydrogencarbonate and carbonate ion
  faded_indicator,  ///< colourless for now
  second_indicator,
  faded_second_indicator
};
inline constexpr std::size_t kComponents = 8;

/// A whole number of quanta of volume or of amount.
using Quanta = std::int64_t;

/// 2^-40 cm3 a quantum of volume (about 1e-12 cm3); 2^-56 mol a quantum of amount (about 1.4e-17 mol).
inline constexpr double kVolumeQuantum_cm3 = 0x1p-40;
inline constexpr double kAmountQuantum_mol = 0x1p-56;

/// Nearest whole number of quanta.
Quanta volume_quanta(double volume_cm3);
Quanta amount_quanta(double amount_mol);

/// Liquid: a volume and an amount of each component.
struct Parcel {
  Quanta volume = 0;
  std::array<Quanta, kComponents> amounts{};

  /// A solution of one component.
  static Parcel solution(double volume_cm3, Component component, double mol_dm3);
  /// An amount without volume.
  static Parcel amount_of(Component component, Quanta amount);
  /// Dissolves more in this volume.
  Parcel& dissolve(Component component, double mol_dm3);

  [[nodiscard]] double volume_cm3() const { return static_cast<double>(volume) * kVolumeQuantum_cm3; }
  [[nodiscard]] Quanta amount(Component c) const { return amounts[static_cast<std::size_t>(c)]; }
  [[nodiscard]] double amount_mol(Component c) const {
    return static_cast<double>(amount(c)) * kAmountQuantum_mol;
  }
  [[nodiscard]] bool empty() const { return volume == 0; }
  /// What a well mixed parcel gives up with `part` of its volume (clamped to 0..volume); amounts rounded
  /// down, except that the whole volume takes everything.
  [[nodiscard]] Parcel share(Quanta part) const;

  Parcel& operator+=(const Parcel& other);
  Parcel& operator-=(const Parcel& other);
  friend Parcel operator+(Parcel a, const Parcel& b) { return a += b; }
  friend Parcel operator-(Parcel a, const Parcel& b) { return a -= b; }
  friend bool operator==(const Parcel&, const Parcel&) = default;
};

enum class Account : std::uint8_t {
  titrant_bottle,
  sample_bottle,
  indicator_bottle,
  wash_bottle,
  funnel,
  column,        ///< burette, above the tap
  wall_film,     ///< on the burette's wall, above the column
  jet,           ///< tap and jet
  pendant_drop,  ///< hanging at the tip
  plug_drop,     ///< seeped out at the ends of the tap's plug, hanging there
  in_flight,
  flask,       ///< the flask's liquid; liquid.h says how it is spread
  flask_wall,  ///< clinging to neck and wall
  pipette,
  beaker,
  bench_top,
  sink,
  air,          ///< what the air gives to the flask and takes from it; holds amounts, no volume
  reactions,    ///< turns one component into another: takes the one and gives the other, so it owes what it
                ///< gave
  pipette_wet,  ///< what clings inside an empty pipette
  pipette_outside,  ///< what clings outside to the tip of one that was dipped in
  second_indicator_bottle,
  weighing_bottle,   ///< a solid standard: amounts without volume
  dissolving_beaker  ///< what it is dissolved in, with rod and funnel
};
inline constexpr std::size_t kAccounts = 24;

/// Balances of all accounts and, by pair, everything that ever moved. Plain data: copying it is a snapshot.
class Ledger {
 public:
  /// Puts liquid into an account from outside; only when a bench is laid out.
  void open(Account account, const Parcel& parcel);

  [[nodiscard]] const Parcel& balance(Account account) const;
  /// Everything that moved from one account to another since the bench was laid out.
  [[nodiscard]] const Parcel& moved(Account from, Account to) const;
  /// Everything that entered one account from the other accounts.
  [[nodiscard]] Parcel entered(Account to) const;
  [[nodiscard]] Parcel left(Account from) const;
  /// Everything on the bench; never changes after the bench was laid out.
  [[nodiscard]] Parcel total() const;

  /// Moves up to `volume` of an account's liquid; returns what was moved.
  Parcel transfer(Account from, Account to, Quanta volume);
  /// Moves a known parcel (a copy: it may be the balance itself). Precondition: the account holds it.
  void move(Account from, Account to, Parcel parcel);
  /// Turns an amount of one component of an account's liquid into another, by way of `reactions`.
  void convert(Account account, Component from, Component to, Quanta amount);

  friend bool operator==(const Ledger&, const Ledger&) = default;

 private:
  std::array<Parcel, kAccounts> balances_{};
  std::array<std::array<Parcel, kAccounts>, kAccounts> moved_{};
};

}  // namespace halfdrop
