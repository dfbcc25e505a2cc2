#include "blunting/inference/model_spec.h"

namespace keenfall::blunting {

ModelSpec default_model() { return {}; }

ModelSpec plain_model() {
  return {.name = "plain",
          .errors = ReadingErrors::gaussian,
          .checkpoint_error = false,
          .shared_shape = false,
          .scatter_by_medium = false,
          .blocks = false,
          .specimens = false,
          .start_effect = false,
          .order_drift = false};
}

}  // namespace keenfall::blunting
