#pragma once
// CHECK_NEAR(value, expected, tolerance): an absolute tolerance in the value's own unit; prints all three.

#include <doctest/doctest.h>

#include <cmath>
#include <iomanip>
#include <ostream>

namespace halfdrop::test {

struct Nearness {
  double value, expected, tolerance;
  explicit operator bool() const { return std::abs(value - expected) <= tolerance; }
};

inline std::ostream& operator<<(std::ostream& out, const Nearness& near) {
  return out << std::setprecision(10) << near.value << " is not within " << near.tolerance << " of "
             << near.expected << " (off by " << near.value - near.expected << ")";
}

inline Nearness near(double value, double expected, double tolerance) { return {value, expected, tolerance}; }

}  // namespace halfdrop::test

#define CHECK_NEAR(value, expected, tolerance) CHECK(halfdrop::test::near(value, expected, tolerance))
#define REQUIRE_NEAR(value, expected, tolerance) REQUIRE(halfdrop::test::near(value, expected, tolerance))
