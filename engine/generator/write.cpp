#include "engine/generator/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

namespace matula::generator {

namespace {

constexpr int amount_digits = 3;

/// Words of several lines, without blank ends.
std::string block(const std::string& key, std::string words) {
  while (!words.empty() && (words.back() == '\n' || words.back() == ' ')) {
    words.pop_back();
  }
  return key + " = \"\"\"\n" + words + "\n\"\"\"\n";
}

std::string amount_line(const Amount& amount) {
  const std::string number = plain_number(amount.typical, amount_digits);
  return amount.key + " = " + (amount.unit.empty() ? number : quoted(number + " " + amount.unit)) + "\n";
}

std::string patient(const Pattern& pattern, const Person& person, const Luck& luck) {
  const Who& who = pattern.who;
  const std::string& request = who.requests[luck.pick("request", who.requests.size())];
  const std::string& note = who.notes[luck.pick("note", who.notes.size())];
  return "\n[patient]\nname = " + quoted(person.given + " " + person.surname + " (invented)") +
         "\nage_sex = " + quoted(person.age_sex) + "\nward = " + quoted(person.ward) +
         "\nrequest = " + quoted(fill(request, person)) + "\nspecimen_note = " + quoted(fill(note, person)) +
         "\n";
}

std::string specimen(const Pattern& pattern, const Drawn& drawn) {
  std::string out = "\n[specimen]\n";
  out += "volume = " + quoted(plain_number(drawn.volume_ml, 2) + " mL") + "\n";
  const bool way = !pattern.way.stretches.empty();
  out += way ? "" : "temperature = " + quoted(plain_number(drawn.temperature_c, 2) + " C") + "\n";
  out += "ph = " + plain_number(drawn.ph, 2) + "\n";
  out += "yellow = " + plain_number(drawn.yellow, 2) + "          # absorbance a cm at 420 nm\n";
  const std::string stood = pattern.handing ? std::to_string(drawn.handed.delay_min) + " min"
                                            : plain_number(drawn.stood_h, 2) + " h";
  out += way ? "" : "stood = " + quoted(stood) + "\n";
  for (const auto& [key, value] : pattern.as_written) {
    out += key + " = " + quoted(value) + "\n";
  }
  for (const Section& section : drawn.sections) {
    out += "\n[specimen." + section.name + "]\n";
    for (const Amount& amount : section.amounts) {
      out += amount_line(amount);
    }
  }
  return out + write_way(pattern.way, drawn.handed);
}

std::string bench(const Pattern& pattern, const Drawn& drawn, const Luck& luck) {
  const double zero = pattern.zero_errors[luck.pick("zero error", pattern.zero_errors.size())];
  return "\n[bench]\nroom = " + quoted(plain_number(drawn.room_c, 2) + " C") +
         "\nurinometer_zero_error = " + (zero < 0 ? "-" : "") + plain_number(std::max(zero, -zero), 1) +
         "\nurinometer_calibration = " + quoted(pattern.calibration) +
         "\nreagents = " + list(pattern.reagents) + "\n\n[asked]\ntests = " + list(pattern.tests) + "\n";
}

/// The right answer does not always stand first.
std::string decision(const scenario::Decision& decision, const Luck& luck) {
  std::vector<std::pair<std::string, std::string>> options = decision.options;
  const std::size_t turn = luck.pick("order of " + decision.key, options.size());
  std::rotate(options.begin(), options.begin() + static_cast<std::ptrdiff_t>(turn), options.end());
  std::string out = "\n[[decision]]\nkey = " + quoted(decision.key) +
                    "\nprompt = " + quoted(decision.prompt) + "\nright = " + quoted(decision.right) +
                    "\nwhy = " + quoted(decision.why) + "\n";
  out += decision.weight == scenario::Decision{}.weight ? "" : fmt::format("weight = {}\n", decision.weight);
  out += "[decision.options]\n";
  for (const auto& [key, words] : options) {
    out += key + " = " + quoted(words) + "\n";
  }
  return out;
}

} // namespace

std::string quoted(const std::string& words) {
  std::string out = "\"";
  for (const char letter : words) {
    out += letter == '"' || letter == '\\' ? std::string("\\") + letter : std::string(1, letter);
  }
  return out + "\"";
}

std::string list(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    out += (out.empty() ? "" : ", ") + quoted(word);
  }
  return "[" + out + "]";
}

std::string plain_number(double value, int digits) {
  if (!(value > 0)) {
    return "0";
  }
  // Correctly rounded and the same everywhere: to_chars in scientific form, then the point is moved.
  std::array<char, 64> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific, digits - 1);
  std::string written(text.data(), end.ptr);
  const std::size_t e = written.find('e');
  const int exponent = std::stoi(written.substr(e + 1));
  std::string figures = written.substr(0, e);
  figures.erase(std::remove(figures.begin(), figures.end(), '.'), figures.end());
  if (exponent < 0) {
    figures = "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0') + figures;
  } else if (static_cast<std::size_t>(exponent) + 1 < figures.size()) {
    figures.insert(static_cast<std::size_t>(exponent) + 1, ".");
  } else {
    figures += std::string(static_cast<std::size_t>(exponent) + 1 - figures.size(), '0');
  }
  if (figures.find('.') != std::string::npos) {
    figures.erase(figures.find_last_not_of('0') + 1);
    if (figures.back() == '.') {
      figures.pop_back();
    }
  }
  return figures;
}

std::string write(const Pattern& pattern, const Drawn& drawn, const Person& person, const Luck& luck,
                  int scenario_seed, const std::string& remark) {
  std::string out = remark;
  out += "title = " + quoted(fill(pattern.titles[luck.pick("title", pattern.titles.size())], person)) + "\n";
  out += "level = " + quoted(pattern.level) + "\nseed = " + std::to_string(scenario_seed) + "\n";
  out += block("story", fill(pattern.stories[luck.pick("story", pattern.stories.size())], person));
  out += block("debrief", fill(pattern.debrief, person));
  out += patient(pattern, person, luck);
  out += pattern.handing ? write_handing(*pattern.handing, drawn.handed, person, luck) : "";
  out += specimen(pattern, drawn) + bench(pattern, drawn, luck);
  for (const scenario::Decision& asked : pattern.decisions) {
    out += decision(asked, luck);
  }
  if (!pattern.verbatim.empty()) {
    out += "\n" + pattern.verbatim;
  }
  return out;
}

} // namespace matula::generator
