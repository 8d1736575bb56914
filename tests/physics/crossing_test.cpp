#include "physics/crossing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "tests/support/near.h"

namespace halfdrop {

namespace {

/// Where crossing() finds it, and how often it looked.
template <class Excess>
double found(double low, double high, double tolerance, Excess excess, int& looks) {
  looks = 0;
  return crossing(low, high, tolerance, [&](double x) {
    ++looks;
    return excess(x);
  });
}

constexpr int kHalvingsOf36 = 39;  // 36 cm3 to 1e-10

}  // namespace

TEST_CASE("a crossing is found as closely as was asked for, in a fraction of the steps of halving") {
  int looks = 0;
  CHECK_NEAR(found(
                 -26.0, 10.0, 1e-10, [](double x) { return std::exp(x) - 2.0; }, looks),
             std::log(2.0), 1e-10);
  CHECK(looks < kHalvingsOf36 / 2);
  CHECK_NEAR(found(
                 -26.0, 10.0, 1e-10, [](double x) { return std::tanh(50.0 * (x - 0.123)); }, looks),
             0.123, 1e-10);
  CHECK(looks < kHalvingsOf36);
}

TEST_CASE("a crossing is found in hardly more steps than halving takes, whatever the quantity does") {
  int looks = 0;
  const auto jump = [](double x) { return x < 3.75 ? -1e-6 : 1e6; };
  CHECK_NEAR(found(-26.0, 10.0, 1e-10, jump, looks), 3.75, 1e-10);
  CHECK(looks <= kHalvingsOf36 + 3);
  const auto flat = [](double x) { return x < -25.0 ? -1.0 : 1e-12 * (x + 25.0); };
  CHECK_NEAR(found(-26.0, 10.0, 1e-10, flat, looks), -25.0, 1e-10);
  CHECK(looks <= kHalvingsOf36 + 3);
}

TEST_CASE("a tolerance finer than the numbers themselves still comes to an end") {
  int looks = 0;
  CHECK_NEAR(found(
                 1e6, 2e6, 1e-12, [](double x) { return x - 1234567.875; }, looks),
             1234567.875, 1e-9);
  CHECK(looks < 80);
}

}  // namespace halfdrop
