#include "game/marking/wording.h"

#include <doctest/doctest.h>

namespace halfdrop {

TEST_CASE("a figure for a table loses its binary tail and nothing else") {
  CHECK(tidy(23.549999999999997) == 23.55);
  CHECK(tidy(0.9420000000000001) == 0.942);
  CHECK(tidy(-0.0123456789012) == -0.0123456789012);
  CHECK(tidy(1.5e-7) == 1.5e-7);
  CHECK(tidy(0.0) == 0.0);
}

TEST_CASE("a half of the last place goes up, as on paper") {
  CHECK(figure_text(0.0023525, 6) == "0.002353");
  CHECK(figure_text(23.555, 2) == "23.56");
  CHECK(figure_text(-23.555, 2) == "-23.56");
  CHECK(figure_text(-0.001, 2) == "0.00");
}

}  // namespace halfdrop
