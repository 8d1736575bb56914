#include "physics/bench/ledger.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

namespace halfdrop {

TEST_CASE("a parcel of solution holds its strength times its volume") {
  const Parcel parcel = Parcel::solution(25.0, Component::analyte, 0.1);
  CHECK(parcel.volume_cm3() == 25.0);
  CHECK_NEAR(parcel.amount_mol(Component::analyte), 0.0025, kAmountQuantum_mol);
  CHECK(parcel.amount(Component::titrant) == 0);
}

TEST_CASE("halves make up the whole to the last bit, even of an odd number of quanta") {
  Parcel whole = Parcel::solution(24.7, Component::titrant, 0.0983);
  whole.volume |= 1;
  whole.amounts[1] = 7;
  Parcel rest = whole;
  const Parcel half = whole.share(whole.volume / 2);
  rest -= half;
  CHECK(half + rest == whole);
  CHECK(half.amount(Component::analyte) == 3);
  CHECK(rest.share(rest.volume) == rest);
}

TEST_CASE("nothing can be halved, and halving nothing gives nothing") {
  CHECK(Parcel{}.share(5) == Parcel{});
  const Parcel parcel = Parcel::solution(1.0, Component::titrant, 0.1);
  CHECK(parcel.share(0) == Parcel{});
  CHECK(parcel.share(-3) == Parcel{});
  CHECK(parcel.share(parcel.volume + 1) == parcel);
}

TEST_CASE("a transfer takes no more than is there and is booked on both sides") {
  Ledger ledger;
  const Parcel stock = Parcel::solution(10.0, Component::titrant, 0.1);
  ledger.open(Account::titrant_bottle, stock);
  const Parcel first = ledger.transfer(Account::titrant_bottle, Account::column, volume_quanta(4.0));
  CHECK(first.volume_cm3() == 4.0);
  const Parcel second = ledger.transfer(Account::titrant_bottle, Account::beaker, volume_quanta(100.0));
  CHECK(second.volume_cm3() == 6.0);
  CHECK(ledger.balance(Account::titrant_bottle) == Parcel{});
  CHECK(ledger.moved(Account::titrant_bottle, Account::column) == first);
  CHECK(ledger.moved(Account::column, Account::titrant_bottle) == Parcel{});
  CHECK(ledger.left(Account::titrant_bottle) == stock);
  CHECK(ledger.entered(Account::beaker) == second);
  CHECK(ledger.total() == stock);
  CHECK(ledger.transfer(Account::jet, Account::beaker, volume_quanta(1.0)) == Parcel{});
}

TEST_CASE("a whole balance can be moved as it stands") {
  Ledger ledger;
  ledger.open(Account::jet, Parcel::solution(0.25, Component::titrant, 0.1));
  const Parcel jet = ledger.balance(Account::jet);
  ledger.move(Account::jet, Account::beaker, ledger.balance(Account::jet));
  CHECK(ledger.balance(Account::beaker) == jet);
  CHECK(ledger.moved(Account::jet, Account::beaker) == jet);
  CHECK(ledger.total() == jet);
}

TEST_CASE("a quantum is far finer than anything on the bench") {
  CHECK(volume_quanta(1e-11) > 0);
  CHECK_NEAR(static_cast<double>(volume_quanta(0.05)) * kVolumeQuantum_cm3, 0.05, 1e-12);
  CHECK_NEAR(static_cast<double>(amount_quanta(0.0025)) * kAmountQuantum_mol, 0.0025, 1e-16);
}

}  // namespace halfdrop
