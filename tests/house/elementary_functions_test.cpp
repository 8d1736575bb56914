// libm's exp, log, pow, sine and kin give other bits on processors with and without fused multiply-add, so
// what touches the state of the bench may not call them. sqrt, floor, round, abs and fmod are exact and free
// to use.

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <string_view>

#include "tests/house/source_files.h"

namespace halfdrop::house {
namespace {

/// Files that may call libm, each with its reason.
const std::map<std::string, std::string> allowed = {
    {"physics/elementary.cpp", "defines exp and log of its own, by those names"},
    {"physics/light/colour.cpp", "colour is a view, never state"},
};

const std::set<std::string_view> functions = {
    "exp",  "exp2", "expm1", "log",  "log2", "log10", "log1p", "pow",   "sin",   "cos",  "tan",    "asin",
    "acos", "atan", "atan2", "sinh", "cosh", "tanh",  "asinh", "acosh", "atanh", "cbrt", "hypot",  "erf",
    "erfc", "sinf", "cosf",  "tanf", "expf", "logf",  "powf",  "expl",  "logl",  "powl", "tgamma", "lgamma"};

bool is_word(char letter) { return std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '_'; }

std::string_view without_end_space(std::string_view text) {
  const std::size_t last = text.find_last_not_of(" \n\t");
  return last == std::string_view::npos ? std::string_view() : text.substr(0, last + 1);
}

std::string_view last_word(std::string_view text) {
  std::size_t start = text.size();
  while (start > 0 && is_word(text[start - 1])) --start;
  return text.substr(start);
}

/// Does a name with this code before it stand for libm's function in an expression? A member, another
/// namespace's function, a declaration and a statement that drops its result do not.
bool names_libm(std::string_view before) {
  before = without_end_space(before);
  if (before.ends_with("::")) {
    const std::string_view qualifier = last_word(before.substr(0, before.size() - 2));
    return qualifier.empty() || qualifier == "std";
  }
  if (before.empty() || before.ends_with("->")) return false;
  if (is_word(before.back())) return last_word(before) == "return";
  if (before.back() == '{') return !last_word(before.substr(0, before.size() - 1)).empty();
  return std::string_view(".;})&").find(before.back()) == std::string_view::npos;
}

/// Is there an argument list, with something in it, at the start of this code?
bool has_arguments(std::string_view after) {
  const std::size_t open = after.find_first_not_of(" \n\t");
  if (open == std::string_view::npos || after[open] != '(') return false;
  return after.find_first_not_of(" \n\t", open + 1) != after.find(')', open);
}

/// The calls of libm in a file, as "path:line: name".
std::vector<std::string> libm_calls(const SourceFile& file) {
  const std::string code = code_of(file.text);
  const std::string_view view = code;
  std::vector<std::string> calls;
  for (std::size_t start = 0; start < code.size(); ++start) {
    if (!is_word(code[start])) continue;
    std::size_t end = start;
    while (end < code.size() && is_word(code[end])) ++end;
    const std::string_view word = view.substr(start, end - start);
    if (functions.contains(word) && names_libm(view.substr(0, start)) && has_arguments(view.substr(end))) {
      const auto line = std::count(code.begin(), code.begin() + static_cast<std::ptrdiff_t>(start), '\n') + 1;
      calls.push_back(file.path + ":" + std::to_string(line) + ": " + std::string(word));
    }
    start = end;
  }
  return calls;
}

std::size_t count_in(const std::string& code) { return libm_calls({"made_up.cpp", code}).size(); }

}  // namespace

TEST_CASE("what touches the state of the bench calls no elementary function of libm") {
  for (const SourceFile& file : sources_below({"physics", "game/session"})) {
    if (allowed.contains(file.path)) continue;
    for (const std::string& call : libm_calls(file)) FAIL_CHECK(call);
  }
}

TEST_CASE("a call of libm is seen however it is written") {
  CHECK(count_in("double y = std::exp(x);") == 1);
  CHECK(count_in("double y = 2 * exp (x) + pow(x, 2);") == 2);
  CHECK(count_in("double y = ::tanh(x) + sinf(x);") == 2);
  CHECK(count_in("return\nlog10(x);") == 1);
  CHECK(count_in("double y{exp(x)};") == 1);
  CHECK(count_in("f(a, cos(x));") == 1);
}

TEST_CASE("own functions, exact functions and comments are no call of libm") {
  CHECK(count_in("double y = elementary::exp(x) + std::sqrt(x) + std::floor(x);") == 0);
  CHECK(count_in("// log(x) would do\n/* std::exp(x)\n pow(x) */ const char* t = \"sin(x)\";") == 0);
  CHECK(count_in("catalog(x); bench.log(x); bench->log(x); log(x);") == 0);
  CHECK(count_in("const Log& log() const; void log(Change change); void f() { log(change); }") == 0);
}

}  // namespace halfdrop::house
