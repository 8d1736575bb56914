#include "game/demonstrator/pencil.h"

#include <doctest/doctest.h>

namespace halfdrop {

TEST_CASE("readings are written with two decimals") {
  CHECK(hundredths_text(0) == "0.00");
  CHECK(hundredths_text(5) == "0.05");
  CHECK(hundredths_text(2160) == "21.60");
  CHECK(hundredths_text(-15) == "-0.15");
}

TEST_CASE("a number is written to its significant figures, trailing zeros and all") {
  CHECK(figures_text(0.0021, 3) == "0.00210");
  CHECK(figures_text(0.0023547, 4) == "0.002355");
  CHECK(figures_text(0.8384, 3) == "0.838");
  CHECK(figures_text(23.075, 3) == "23.1");
  CHECK(figures_text(120.0, 3) == "120");
  CHECK(figures_text(9.996, 3) == "10.0");
  CHECK(figures_text(0.09999, 3) == "0.100");
  CHECK(figures_text(1.0, 3) == "1.00");
}

}  // namespace halfdrop
