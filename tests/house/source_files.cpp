#include "tests/house/source_files.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace halfdrop::house {
namespace {

const std::filesystem::path top = HALFDROP_SOURCE_FOLDER;

bool is_source(const std::filesystem::path& path) {
  return path.extension() == ".h" || path.extension() == ".cpp";
}

/// Where the comment or literal that starts at `start` ends (one past), or `start` if none starts there.
std::size_t end_of_blank(std::string_view text, std::size_t start) {
  const std::string_view rest = text.substr(start);
  const auto past = [&](std::size_t found, std::size_t length) {
    return found == std::string_view::npos ? text.size() : found + length;
  };
  if (rest.starts_with("//")) return past(text.find('\n', start), 0);
  if (rest.starts_with("/*")) return past(text.find("*/", start + 2), 2);
  if (rest.starts_with("R\"(")) return past(text.find(")\"", start + 3), 2);
  const bool digit_separator = start > 0 && std::isalnum(static_cast<unsigned char>(text[start - 1])) != 0;
  if (rest.front() != '"' && (rest.front() != '\'' || digit_separator)) return start;
  std::size_t end = start + 1;
  while (end < text.size() && text[end] != rest.front()) end += text[end] == '\\' ? 2 : 1;
  return std::min(end + 1, text.size());
}

}  // namespace

std::string text_of(const std::string& path_from_the_top) {
  std::ifstream file(top / path_from_the_top);
  REQUIRE_MESSAGE(file.good(), "cannot open " << path_from_the_top);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<SourceFile> sources_below(const std::vector<std::string>& folders) {
  std::vector<SourceFile> files;
  for (const std::string& folder : folders) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(top / folder)) {
      if (!entry.is_regular_file() || !is_source(entry.path())) continue;
      const std::string path = entry.path().lexically_relative(top).generic_string();
      files.push_back({path, text_of(path)});
    }
  }
  std::sort(files.begin(), files.end(),
            [](const SourceFile& a, const SourceFile& b) { return a.path < b.path; });
  return files;
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  std::istringstream stream{std::string(text)};
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::string code_of(std::string_view text) {
  std::string code(text);
  for (std::size_t place = 0; place < code.size();) {
    const std::size_t end = end_of_blank(text, place);
    for (std::size_t i = place; i < end; ++i) {
      if (code[i] != '\n') code[i] = ' ';
    }
    place = std::max(end, place + 1);
  }
  return code;
}

std::string output_of(const std::string& command) {
  std::FILE* pipe = popen(command.c_str(), "r");
  REQUIRE_MESSAGE(pipe != nullptr, "cannot run " << command);
  std::string output;
  std::array<char, 4096> buffer{};
  while (const std::size_t count = std::fread(buffer.data(), 1, buffer.size(), pipe)) {
    output.append(buffer.data(), count);
  }
  REQUIRE_MESSAGE(pclose(pipe) == 0, command << " ended badly: " << output);
  return output;
}

}  // namespace halfdrop::house
