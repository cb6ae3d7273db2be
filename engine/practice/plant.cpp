#include "engine/practice/plant.hpp"

#include <cmath>
#include <map>

namespace matula::practice {

namespace {

using reception::Delivery;

struct Hand {
  const DeliveryRules& rules;
  const Draws& draws;
};

void no_label(const Hand&, Delivery& delivery) {
  delivery.label = "none";
  delivery.label_name.reset();
  delivery.label_number.reset();
}

void on_lid(const Hand&, Delivery& delivery) {
  delivery.label = "lid";
}

void wrong_name(const Hand& hand, Delivery& delivery) {
  if (hand.draws.even("name missing") < 0.3) {
    delivery.label_name.reset();
  } else {
    delivery.label_name =
        hand.rules.other_names[hand.draws.pick("other name", hand.rules.other_names.size())];
  }
}

/// One digit of the label's number becomes the next one.
void wrong_number(const Hand& hand, Delivery& delivery) {
  std::string number = delivery.form_number;
  std::vector<std::size_t> digits;
  for (std::size_t i = 0; i < number.size(); ++i) {
    if (number[i] >= '0' && number[i] <= '9') {
      digits.push_back(i);
    }
  }
  if (digits.empty()) {
    delivery.label_number.reset();
    return;
  }
  char& digit = number[digits[hand.draws.pick("digit", digits.size())]];
  digit = digit == '9' ? '0' : static_cast<char>(digit + 1);
  delivery.label_number = number;
}

void no_time(const Hand&, Delivery& delivery) {
  delivery.passed_min.reset();
}

void too_old(const Hand& hand, Delivery& delivery) {
  const auto& minutes = hand.rules.too_old_min;
  const int age = static_cast<int>(std::lround(hand.draws.between("too old", minutes.low, minutes.high)));
  delivery.received_min = delivery.passed_min.value_or(delivery.received_min) + age;
}

void too_little(const Hand& hand, Delivery& delivery) {
  constexpr double hardly = 4;
  constexpr double short_ml = 9;
  delivery.volume_ml = hand.draws.even("hardly") < 0.4 ? hardly : short_ml;
}

void leaks(const Hand&, Delivery& delivery) {
  delivery.leaking = true;
}

void fouled(const Hand& hand, Delivery& delivery) {
  static const std::vector<std::string> matter{"faeces", "menstrual", "paper", "powder"};
  delivery.contamination = matter[hand.draws.pick("matter", matter.size())];
}

void wrong_vessel(const Hand& hand, Delivery& delivery) {
  static const std::vector<std::string> vessels{"household_jar", "nappy", "bedpan", "drainage_bag"};
  delivery.container = vessels[hand.draws.pick("vessel", vessels.size())];
}

void spoiling_preservative(const Hand& hand, Delivery& delivery) {
  static const std::vector<std::string> bottles{"formalin", "acid", "alkali", "thymol"};
  delivery.label_preservative = bottles[hand.draws.pick("preservative", bottles.size())];
}

const std::map<std::string, void (*)(const Hand&, Delivery&)>& hands() {
  static const std::map<std::string, void (*)(const Hand&, Delivery&)> all{
      {"unlabelled", no_label},
      {"label_on_lid", on_lid},
      {"name", wrong_name},
      {"number", wrong_number},
      {"no_time", no_time},
      {"too_old", too_old},
      {"too_little", too_little},
      {"leaking", leaks},
      {"contaminated", fouled},
      {"wrong_container", wrong_vessel},
      {"wrong_preservative", spoiling_preservative}};
  return all;
}

} // namespace

bool plant(const std::string& fault, const DeliveryRules& rules, const Draws& draws, Delivery& delivery) {
  const auto hand = hands().find(fault);
  if (hand == hands().end()) {
    return false;
  }
  hand->second({rules, draws}, delivery);
  return true;
}

} // namespace matula::practice
