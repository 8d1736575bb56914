#include "game/records/text_layout.h"

#include <algorithm>

namespace halfdrop {

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

std::size_t columns(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

std::string right(const std::string& text, std::size_t width) {
  const std::size_t used = columns(text);
  return used < width ? std::string(width - used, ' ') + text : text;
}

std::string left(const std::string& text, std::size_t width) {
  const std::size_t used = columns(text);
  return used < width ? text + std::string(width - used, ' ') : text;
}

std::string tame(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool c1 = byte == 0xC2U && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0U;
    if (c1) ++i;
    out += byte < 0x20U || byte == 0x7FU || c1 ? '?' : text[i];
  }
  return out;
}

std::string wrapped(const std::string& first, const std::string& text) {
  std::string out;
  std::string line = first;
  const std::string hanging(columns(first), ' ');
  std::string word;
  bool line_has_words = false;
  for (const char c : tame(text) + " ") {
    if (c != ' ') {
      word += c;
      continue;
    }
    if (word.empty()) continue;
    if (line_has_words && columns(line) + 1 + columns(word) > kTextWidth) {
      out += line + "\n";
      line = hanging;
      line_has_words = false;
    }
    line += (line_has_words ? " " : "") + word;
    line_has_words = true;
    word.clear();
  }
  return out + line + "\n";
}

}  // namespace halfdrop
