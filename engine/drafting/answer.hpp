#pragma once

#include "engine/drafting/row.hpp"
#include "engine/reception/book.hpp"
#include "engine/reception/delivery.hpp"

namespace matula::drafting {

/// What the counter expects for a delivery: the judgement of the reception's own rules.
[[nodiscard]] Answer answer_to(const reception::Delivery& delivery, const reception::Book& book);

} // namespace matula::drafting
