// How a table writes 17.5: with a point, with a comma, or as its numbers show together.
#pragma once

namespace keenfall::exchange {

enum class DecimalMark { decide, point, comma };

}  // namespace keenfall::exchange
