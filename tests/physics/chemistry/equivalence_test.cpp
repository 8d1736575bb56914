#include "physics/chemistry/equivalence.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

namespace halfdrop {
namespace {

Substance made(int ions, std::vector<AcidSystem> systems) {
  Substance substance;
  if (ions != 0) substance.ions.push_back({"ion", ions > 0 ? 1 : -1, ions > 0 ? 1.0 * ions : -1.0 * ions});
  substance.systems = std::move(systems);
  return substance;
}

AcidSystem acid(std::vector<double> pks, int charge = 0, double count = 1.0) {
  AcidSystem system;
  system.steps = static_cast<int>(pks.size());
  for (std::size_t i = 0; i < pks.size(); ++i) system.pk[i] = pks[i];
  system.protonated_charge = charge;
  system.count = count;
  return system;
}

void check_ratios(const Substance& analyte, const Substance& titrant, const std::vector<double>& expected) {
  const std::vector<double> found = equivalence_ratios(analyte, titrant);
  REQUIRE(found.size() == expected.size());
  for (std::size_t i = 0; i < found.size(); ++i) CHECK_NEAR(found[i], expected[i], 1e-12);
}

const Substance kHydrochloric = made(-1, {}), kAlkali = made(1, {}), kLimewater = made(2, {});
const Substance kEthanoic = made(0, {acid({4.756})}), kAmmonia = made(0, {acid({9.245}, 1)});
const Substance kPhosphoric = made(0, {acid({2.148, 7.198, 12.35})});
const Substance kCarbonate = made(2, {acid({6.351, 10.329})});
const Substance kBorax = made(2, {acid({9.237}, 0, 4.0)});
const Substance kSulfuric = made(0, {acid({1.987}, -1)});

}  // namespace

// Source: balanced equations of school textbooks, e.g. OpenStax Chemistry 2e, sections 4.2 and 14.7.
TEST_CASE("equivalences are those of the balanced equations") {
  check_ratios(kHydrochloric, kAlkali, {1.0});
  check_ratios(kAlkali, kHydrochloric, {1.0});
  check_ratios(kEthanoic, kAlkali, {1.0});
  check_ratios(kAmmonia, kHydrochloric, {1.0});
  check_ratios(kEthanoic, kAmmonia, {1.0});
  check_ratios(kPhosphoric, kAlkali, {1.0, 2.0, 3.0});
  check_ratios(kCarbonate, kHydrochloric, {1.0, 2.0});
  check_ratios(kBorax, kHydrochloric, {2.0});
  check_ratios(kHydrochloric, kLimewater, {0.5});
  check_ratios(kSulfuric, kAlkali, {1.0, 2.0});
}

TEST_CASE("turned round, the same equation gives the inverse ratio") {
  check_ratios(kHydrochloric, kCarbonate, {0.5, 1.0});
  check_ratios(kAlkali, kPhosphoric, {1.0 / 3.0, 0.5, 1.0});
}

TEST_CASE("ammonia takes two protons of phosphoric acid, for the third is a weaker acid than ammonium") {
  check_ratios(kPhosphoric, kAmmonia, {1.0, 2.0});
}

TEST_CASE("what does not neutralise has no equivalence") {
  check_ratios(kHydrochloric, kHydrochloric, {});
  check_ratios(kHydrochloric, kEthanoic, {});
  check_ratios(kAlkali, kAmmonia, {});
  check_ratios(made(1, {acid({4.756})}), kAlkali, {});
}

}  // namespace halfdrop
