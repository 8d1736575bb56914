#include "physics/chemistry/formula.h"

#include <algorithm>
#include <cstdint>

namespace halfdrop {
namespace {

struct Element {
  std::string_view symbol;
  double g_mol;
};

constexpr Element kElements[] = {
    {"H", 1.008},   {"Li", 6.94},   {"B", 10.81},   {"C", 12.011},  {"N", 14.007},  {"O", 15.999},
    {"F", 18.998},  {"Na", 22.990}, {"Mg", 24.305}, {"Al", 26.982}, {"Si", 28.085}, {"P", 30.974},
    {"S", 32.06},   {"Cl", 35.45},  {"K", 39.098},  {"Ca", 40.078}, {"Cr", 51.996}, {"Mn", 54.938},
    {"Fe", 55.845}, {"Cu", 63.546}, {"Zn", 65.38},  {"Br", 79.904}, {"Sr", 87.62},  {"Ag", 107.87},
    {"Sn", 118.71}, {"I", 126.90},  {"Ba", 137.33}, {"Pb", 207.2}};
constexpr std::string_view kDot = "·";
constexpr int kHighestCount = 999;
constexpr int kDeepestBrackets = 8;

class Parser {
 public:
  Parser(std::string_view text, std::string& fault) : text_(text), fault_(fault) {}

  std::optional<double> whole() {
    double sum = 0.0;
    do {
      const std::optional<int> times = count();
      if (!times) return std::nullopt;
      const std::optional<double> mass = group(0);
      if (!mass) return std::nullopt;
      sum += *times * *mass;
    } while (take(kDot));
    if (!text_.empty()) return wrong("expected an element");
    return sum;
  }

 private:
  std::nullopt_t wrong(const std::string& what) {
    fault_ = what + (text_.empty() ? std::string(" at the end") : " at \"" + std::string(text_) + "\"");
    return std::nullopt;
  }
  bool take(std::string_view piece) {
    if (!text_.starts_with(piece)) return false;
    text_.remove_prefix(piece.size());
    return true;
  }

  /// Elements and brackets, one or more, up to what is neither.
  std::optional<double> group(int depth) {
    double sum = 0.0;
    bool any = false;
    while (!text_.empty() && ((text_[0] >= 'A' && text_[0] <= 'Z') || text_[0] == '(')) {
      const std::optional<double> mass = text_[0] == '(' ? bracket(depth) : element();
      if (!mass) return std::nullopt;
      const std::optional<int> times = count();
      if (!times) return std::nullopt;
      sum += *times * *mass;
      any = true;
    }
    if (!any) return wrong("expected an element");
    return sum;
  }
  std::optional<double> bracket(int depth) {
    if (depth >= kDeepestBrackets) return wrong("too many brackets");
    text_.remove_prefix(1);
    const std::optional<double> mass = group(depth + 1);
    if (mass && !take(")")) return wrong("expected a closing bracket");
    return mass;
  }
  std::optional<double> element() {
    const std::size_t letters = text_.size() > 1 && text_[1] >= 'a' && text_[1] <= 'z' ? 2 : 1;
    const std::string_view symbol = text_.substr(0, letters);
    const auto* const found = std::find_if(std::begin(kElements), std::end(kElements),
                                           [&](const Element& e) { return e.symbol == symbol; });
    if (found == std::end(kElements)) return wrong("unknown element");
    text_.remove_prefix(letters);
    return found->g_mol;
  }
  /// A whole number from 1; 1 where none stands.
  std::optional<int> count() {
    int number = 0;
    bool any = false;
    while (!text_.empty() && text_[0] >= '0' && text_[0] <= '9') {
      number = 10 * number + (text_[0] - '0');
      if (number == 0 || number > kHighestCount) return wrong("expected a count from 1 to 999");
      text_.remove_prefix(1);
      any = true;
    }
    return any ? number : 1;
  }

  std::string_view text_;
  std::string& fault_;
};

}  // namespace

std::optional<double> molar_mass_g_mol(std::string_view formula, std::string& fault) {
  return Parser(formula, fault).whole();
}

}  // namespace halfdrop
