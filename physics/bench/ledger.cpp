#include "physics/bench/ledger.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace halfdrop {

namespace {

__extension__ using Wide = __int128;

std::size_t index(Account account) { return static_cast<std::size_t>(account); }

}  // namespace

Quanta volume_quanta(double volume_cm3) { return std::llround(volume_cm3 / kVolumeQuantum_cm3); }
Quanta amount_quanta(double amount_mol) { return std::llround(amount_mol / kAmountQuantum_mol); }

Parcel Parcel::solution(double volume_cm3, Component component, double mol_dm3) {
  Parcel parcel;
  parcel.volume = volume_quanta(volume_cm3);
  parcel.amounts[static_cast<std::size_t>(component)] = amount_quanta(mol_dm3 * volume_cm3 / 1000.0);
  return parcel;
}

Parcel Parcel::amount_of(Component component, Quanta amount) {
  Parcel parcel;
  parcel.amounts[static_cast<std::size_t>(component)] = amount;
  return parcel;
}

Parcel& Parcel::dissolve(Component component, double mol_dm3) {
  amounts[static_cast<std::size_t>(component)] += amount_quanta(mol_dm3 * volume_cm3() / 1000.0);
  return *this;
}

Parcel Parcel::share(Quanta part) const {
  if (part >= volume) return *this;
  Parcel taken;
  if (part <= 0) return taken;
  taken.volume = part;
  for (std::size_t i = 0; i < kComponents; ++i) {
    if (amounts[i] != 0) taken.amounts[i] = static_cast<Quanta>(Wide{amounts[i]} * part / volume);
  }
  return taken;
}

Parcel& Parcel::operator+=(const Parcel& other) {
  volume += other.volume;
  for (std::size_t i = 0; i < kComponents; ++i) amounts[i] += other.amounts[i];
  return *this;
}

Parcel& Parcel::operator-=(const Parcel& other) {
  volume -= other.volume;
  for (std::size_t i = 0; i < kComponents; ++i) amounts[i] -= other.amounts[i];
  return *this;
}

void Ledger::open(Account account, const Parcel& parcel) { balances_[index(account)] += parcel; }

const Parcel& Ledger::balance(Account account) const { return balances_[index(account)]; }

const Parcel& Ledger::moved(Account from, Account to) const { return moved_[index(from)][index(to)]; }

Parcel Ledger::entered(Account to) const {
  Parcel sum;
  for (const auto& row : moved_) sum += row[index(to)];
  return sum;
}

Parcel Ledger::left(Account from) const {
  Parcel sum;
  for (const Parcel& parcel : moved_[index(from)]) sum += parcel;
  return sum;
}

Parcel Ledger::total() const {
  Parcel sum;
  for (const Parcel& parcel : balances_) sum += parcel;
  return sum;
}

Parcel Ledger::transfer(Account from, Account to, Quanta volume) {
  const Parcel parcel = balances_[index(from)].share(volume);
  if (parcel.volume > 0) move(from, to, parcel);
  return parcel;
}

void Ledger::move(Account from, Account to, Parcel parcel) {
  assert(from != to);
  assert(parcel.volume >= 0 && parcel.volume <= balance(from).volume);
  balances_[index(from)] -= parcel;
  balances_[index(to)] += parcel;
  moved_[index(from)][index(to)] += parcel;
}

void Ledger::convert(Account account, Component from, Component to, Quanta amount) {
  assert(amount >= 0 && amount <= balance(account).amount(from));
  move(account, Account::reactions, Parcel::amount_of(from, amount));
  move(Account::reactions, account, Parcel::amount_of(to, amount));
}

}  // namespace halfdrop
