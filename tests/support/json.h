#pragma once
// JSON for tests. What nlohmann's templates take long to compile for is compiled once, in json.cpp.

#include <doctest/doctest.h>

#include <string>

#include <nlohmann/json_fwd.hpp>

namespace halfdrop::test {

/// Keeps keys in the order of the text.
using Json = nlohmann::ordered_json;

/// Fails the running test if the text is not JSON.
[[nodiscard]] Json json_of(const std::string& text);

/// On one line.
[[nodiscard]] std::string compact(const Json& json);

/// What a JSON text becomes by a JSON Patch (RFC 6902), on one line. Fails the running test if the patch does
/// not fit.
[[nodiscard]] std::string patched(const std::string& text, const std::string& patch);

}  // namespace halfdrop::test

/// How a failed check shows it.
template <>
struct doctest::StringMaker<halfdrop::test::Json> {
  static String convert(const halfdrop::test::Json& json);
};
