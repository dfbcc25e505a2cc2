// One judgement as a JSON object, wherever it stands in a document. Private to this folder (it
// shows the library).
#pragma once

#include "verdicts/judgement.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

void put_judgement(Json& object, const verdicts::Judgement& judgement);

}  // namespace keenfall::wire
