#include "game/marking/written_number.h"

#include <doctest/doctest.h>

#include "tests/support/near.h"

namespace halfdrop {
namespace {

TEST_CASE("a figure is read as people write it: comma, unit, power of ten, spaces") {
  struct Trial {
    const char* text;
    const char* plain;
    double value;
  };
  for (const Trial& trial : {Trial{"24.50", "24.50", 24.50},
                             Trial{"24,50", "24.50", 24.50},
                             Trial{" 47.75 cm3", "47.75", 47.75},
                             Trial{"47,75 cm³", "47.75", 47.75},
                             Trial{"47.75\u00a0mL", "47.75", 47.75},
                             Trial{"2.355e-3", "2.355e-3", 2.355e-3},
                             Trial{"2.355E-3", "2.355e-3", 2.355e-3},
                             Trial{"2.355×10⁻³", "2.355e-3", 2.355e-3},
                             Trial{"2.355 x 10^-3 mol", "2.355e-3", 2.355e-3},
                             Trial{"2,355·10⁻³ mol", "2.355e-3", 2.355e-3},
                             Trial{"2.355*10^−3", "2.355e-3", 2.355e-3},
                             Trial{"1.2×10¹² mol", "1.2e12", 1.2e12},
                             Trial{"0.0942 mol dm⁻³", "0.0942", 0.0942},
                             Trial{"0.0942 mol/dm3", "0.0942", 0.0942},
                             Trial{"0.0942 mol·dm⁻³", "0.0942", 0.0942},
                             Trial{"0.0942M", "0.0942", 0.0942},
                             Trial{"−0.05", "-0.05", -0.05},
                             Trial{"+0.45", "0.45", 0.45},
                             Trial{".5", ".5", 0.5},
                             Trial{"21", "21", 21.0}}) {
    CAPTURE(trial.text);
    CHECK(plain_figure(trial.text) == std::string(trial.plain));
    REQUIRE(number_written(trial.text));
    CHECK_NEAR(*number_written(trial.text), trial.value, 1e-12 * trial.value * trial.value + 1e-15);
  }
}

TEST_CASE("what is no number is not taken for one") {
  for (const char* text : {"",
                           " ",
                           "abc",
                           "q",
                           "cm3",
                           "24,5,1",
                           "24.5.1",
                           "1,234.5",
                           "about 21.50",
                           "21.50?",
                           "nan",
                           "inf",
                           "0x10",
                           "24 50",
                           "24.5e",
                           "--1",
                           "-",
                           ".",
                           "1e999999999999",
                           "24.50 apples"}) {
    CAPTURE(text);
    CHECK(!number_written(text));
  }
}

TEST_CASE("a comma or a unit takes no decimals away") {
  CHECK(written_to_half_a_division("47,75"));
  CHECK(written_to_half_a_division("47.75 cm³"));
  CHECK(!written_to_half_a_division("47,7"));
  CHECK(decimals_written("23,55 cm3") == 2);
  CHECK(significant_figures("2.355×10⁻³ mol") == 4);
  CHECK_NEAR(half_unit_written("2,15×10⁻³"), 0.5e-5, 1e-18);
}

TEST_CASE("a power beyond all numbers does no harm") {
  CHECK_NEAR(half_unit_written("0.0e-2147483648"), 0.0, 0.0);
  CHECK(half_unit_written("1e2147483647") > 1e300);
}

TEST_CASE("significant figures are counted as the trade counts them") {
  // OpenStax Chemistry 2e, section 1.5 (from memory): leading zeros do not count, trailing zeros after a
  // point do.
  CHECK(significant_figures("0.0859") == 3);
  CHECK(significant_figures("21.65") == 4);
  CHECK(significant_figures("2.150e-3") == 4);
  CHECK(significant_figures("0.850") == 3);
  CHECK(significant_figures("20.05") == 4);
  CHECK(significant_figures("0.00") == 0);
  CHECK(significant_figures("") == 0);
}

TEST_CASE("half a unit of the last place written") {
  CHECK_NEAR(half_unit_written("21.65"), 0.005, 1e-15);
  CHECK_NEAR(half_unit_written("2.15e-3"), 0.5e-5, 1e-18);
  CHECK_NEAR(half_unit_written("2.15E+1"), 0.05, 1e-12);
  CHECK_NEAR(half_unit_written("21"), 0.5, 1e-15);
}

}  // namespace
}  // namespace halfdrop
