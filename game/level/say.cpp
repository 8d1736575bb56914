#include "game/level/say.h"

#include <cstdio>
#include <cstdlib>
#include <mutex>
#include <set>

#include "game/level/level.h"
#include "game/level/text_catalogue.h"

namespace halfdrop {

namespace {

constexpr int kCannotBeRead = 3;

const TextCatalogue* in_force = nullptr;  // NOLINT: set before anything is said, then only read

const TextCatalogue& english() {
  static const TextCatalogue catalogue = [] {
    Result<TextCatalogue> read = read_language(data_folder(), std::string(kFirstLanguage));
    if (read) return std::move(*read);
    for (const Fault& fault : read.error()) std::fprintf(stderr, "%s\n", to_string(fault).c_str());
    std::exit(kCannotBeRead);
  }();
  return catalogue;
}

/// The phrase as it stands, kept where it can be pointed to.
const std::string& as_it_stands(Phrase phrase) {
  static std::mutex guard;
  static std::set<std::string, std::less<>> kept;
  const std::scoped_lock lock(guard);
  return *kept.emplace(phrase.key()).first;
}

}  // namespace

const std::string& say(Phrase phrase) {
  static const std::string nothing;
  if (phrase.empty()) return nothing;
  if (!phrase.has_key()) return as_it_stands(phrase);
  const auto& texts = (in_force != nullptr ? *in_force : english()).texts;
  const auto found = texts.find(phrase.key());
  if (found != texts.end()) return found->second;
  const auto first = english().texts.find(phrase.key());
  return first != english().texts.end() ? first->second : as_it_stands(phrase);
}

std::string say(Phrase phrase, std::initializer_list<Blank> blanks) {
  const std::string& text = say(phrase);
  std::string said;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t open = text.find('{', from), close = text.find('}', open);
    said.append(text, from, open - from);
    if (close == std::string::npos) break;
    const std::string_view name = std::string_view(text).substr(open + 1, close - open - 1);
    for (const Blank& blank : blanks) {
      if (blank.name == name) said += blank.value;
    }
    from = close + 1;
  }
  return said;
}

Phrase::operator std::string_view() const { return say(*this); }
Phrase::operator std::string() const { return say(*this); }

void speak(const TextCatalogue& catalogue) { in_force = &catalogue; }
void speak_english() { in_force = nullptr; }

}  // namespace halfdrop
