#include "tests/support/json.h"

#include <nlohmann/json.hpp>

namespace halfdrop::test {

Json json_of(const std::string& text) {
  Json json = Json::parse(text, nullptr, false);
  REQUIRE_MESSAGE(!json.is_discarded(), "not JSON: " << text);
  return json;
}

std::string compact(const Json& json) { return json.dump(); }

std::string patched(const std::string& text, const std::string& patch) {
  try {
    return compact(json_of(text).patch(json_of(patch)));
  } catch (const Json::exception& error) {
    FAIL(error.what());
    return {};
  }
}

}  // namespace halfdrop::test

doctest::String doctest::StringMaker<halfdrop::test::Json>::convert(const halfdrop::test::Json& json) {
  return halfdrop::test::compact(json).c_str();
}
