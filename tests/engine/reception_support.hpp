#pragma once

#include "engine/reception/book.hpp"
#include "engine/reception/delivery.hpp"
#include "engine/scenario/problem.hpp"

#include <catch2/catch.hpp>

namespace matula::test {

inline const reception::Book& book() {
  const auto& read = reception::shipped_book();
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

/// A delivery without a fault, to spoil in one place.
inline reception::Delivery good_delivery() {
  reception::Delivery delivery;
  delivery.form_name = "N";
  delivery.form_number = "1";
  delivery.label_name = "N";
  delivery.label_number = "1";
  delivery.requests = {"appearance", "specific_gravity", "protein", "sugar", "sediment"};
  delivery.kind = "midstream_female";
  delivery.container = "clean_cup";
  delivery.passed_min = 8 * 60;
  delivery.received_min = 8 * 60 + 30;
  delivery.volume_ml = 60;
  return delivery;
}

/// From 7 to 7; the void at the start was thrown away.
inline reception::DayRecord good_day(double protein_g_per_l, double creatinine_g_per_l) {
  reception::DayRecord day;
  day.start_min = 7 * 60;
  day.stop_min = day.start_min + 24 * 60;
  for (const int at_hour : {7, 12, 18, 23, 31}) {
    reception::Void one;
    one.at_min = at_hour * 60;
    one.volume_ml = 300;
    one.kept = at_hour != 7;
    one.protein_g_per_l = protein_g_per_l;
    one.creatinine_g_per_l = creatinine_g_per_l;
    day.voids.push_back(one);
  }
  return day;
}

} // namespace matula::test
