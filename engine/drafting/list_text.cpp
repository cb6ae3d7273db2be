#include "engine/drafting/list_text.hpp"

#include "engine/generator/write.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace matula::drafting {

namespace {

/// A word of the list and where it stands, quotes included; `comma` is where its comma is, or npos.
struct Item {
  std::string word;
  std::size_t from = 0;
  std::size_t to = 0;
  std::size_t comma = std::string::npos;
};

std::size_t behind_remark(const std::string& list, std::size_t at) {
  const auto end = list.find('\n', at);
  return end == std::string::npos ? list.size() : end;
}

/// Keys hold no quotes and no backslashes, so the next quote of the same kind ends the word.
std::vector<Item> items_of(const std::string& list) {
  std::vector<Item> items;
  for (std::size_t at = 0; at < list.size(); ++at) {
    const char letter = list[at];
    if (letter == '#') {
      at = behind_remark(list, at);
    } else if (letter == '"' || letter == '\'') {
      const auto end = list.find(letter, at + 1);
      if (end == std::string::npos) {
        return items;
      }
      items.push_back({list.substr(at + 1, end - at - 1), at, end + 1});
      at = end;
    } else if (letter == ',' && !items.empty()) {
      items.back().comma = at;
    }
  }
  return items;
}

/// Numbers of the list and where they stand; nothing for a list that holds anything else.
std::vector<Item> numbers_in(const std::string& list) {
  constexpr const char* of_numbers = "0123456789+-._eE";
  constexpr const char* between = " \t\r\n,";
  std::vector<Item> items;
  if (list.empty() || list.front() != '[') {
    return items;
  }
  for (std::size_t at = 1; at + 1 < list.size(); ++at) {
    if (list[at] == '#') {
      at = behind_remark(list, at) - 1;
    } else if (std::string(of_numbers).find(list[at]) != std::string::npos) {
      const auto end = list.find_first_not_of(of_numbers, at);
      items.push_back({list.substr(at, end - at), at, end});
      at = end - 1;
    } else if (std::string(between).find(list[at]) == std::string::npos) {
      return {};
    }
  }
  return items;
}

} // namespace

std::vector<std::string> numbers_of_list(const std::string& list) {
  std::vector<std::string> numbers;
  for (const Item& item : numbers_in(list)) {
    numbers.push_back(item.word);
  }
  return numbers;
}

std::string with_numbers(const std::string& list, const std::vector<std::string>& numbers) {
  const auto items = numbers_in(list);
  if (items.size() != numbers.size()) {
    return fmt::format("[{}]", fmt::join(numbers, ", "));
  }
  std::string other = list;
  for (std::size_t i = items.size(); i-- > 0;) {
    other.replace(items[i].from, items[i].to - items[i].from, numbers[i]);
  }
  return other;
}

std::vector<std::string> words_of_list(const std::string& list) {
  std::vector<std::string> words;
  if (!list.empty() && list.front() == '[') {
    for (const Item& item : items_of(list)) {
      words.push_back(item.word);
    }
  }
  return words;
}

std::string with_word(const std::string& list, const std::string& word) {
  const auto items = items_of(list);
  const std::string written = generator::quoted(word);
  if (list.empty() || list.front() != '[') {
    return "[" + written + "]";
  }
  if (std::any_of(items.begin(), items.end(), [&](const Item& item) { return item.word == word; })) {
    return list;
  }
  std::string longer = list;
  if (items.empty()) {
    return longer.insert(1, written);
  }
  const Item& last = items.back();
  return last.comma == std::string::npos ? longer.insert(last.to, ", " + written)
                                         : longer.insert(last.comma + 1, " " + written + ",");
}

std::string without_word(const std::string& list, const std::string& word) {
  const auto items = items_of(list);
  const auto found =
      std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.word == word; });
  if (found == items.end()) {
    return list;
  }
  std::string shorter = list;
  if (found->comma != std::string::npos) {
    // Its own comma and the blank behind it go too.
    std::size_t end = found->comma + 1;
    end += end < list.size() && list[end] == ' ' ? 1 : 0;
    shorter.erase(found->comma, end - found->comma);
    return shorter.erase(found->from, found->to - found->from);
  }
  shorter.erase(found->from, found->to - found->from);
  if (found != items.begin()) {
    const std::size_t comma = (found - 1)->comma;
    const bool blank = comma + 1 < shorter.size() && shorter[comma + 1] == ' ';
    shorter.erase(comma, blank ? 2 : 1);
  }
  return shorter;
}

} // namespace matula::drafting
