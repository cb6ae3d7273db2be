#pragma once

#include "engine/author/turning.hpp"

#include <map>

namespace matula::author {

/// Turns one thing after another until all that is wished holds, or says what does not.
class Search {
public:
  Search(Turning& turning, const Wish& wish);

  /// One round over everything; whether anything had to be turned.
  bool round();
  /// Once more the gravity alone, which the last tests may have moved.
  void settle_gravity();
  /// Why it does not come out, as far as the turning itself has found; the rest is for whoever looks at the
  /// result. Of the last round.
  [[nodiscard]] const std::vector<std::string>& blocked() const { return blocked_; }
  /// What a test missed is put down to, in words.
  [[nodiscard]] std::string why_missed(const std::string& test, const Shown& got) const;
  /// How far a reading is from what is wished of it, in grades.
  [[nodiscard]] double off(const std::string& test, double intensity) const;

private:
  /// Tests that one substance makes.
  struct Group {
    Place analyte;
    std::vector<double> ladder;
    std::vector<std::string> tests;
    bool all_negative = true;
    double enough = 0;
  };

  void take_in(const std::string& test, const Want& want);
  bool turn_gravity();
  bool turn_group(const Group& group);
  bool turn_colour();
  bool turn_clarity();
  double worst(const Group& group, bool between);
  [[nodiscard]] std::vector<double> ladder_of(const Place& analyte, const std::string& test) const;
  [[nodiscard]] bool is_analyte(const std::string& key) const;
  template <typename Set, typename Read>
  bool middle_of_word(const std::vector<double>& steps, const std::string& word, const Set& set,
                      const Read& read);

  Turning& turning_;
  Wish wish_;
  std::vector<Group> groups_;
  std::vector<std::string> blocked_;
  bool first_ = true;
};

} // namespace matula::author
