package varanid.intake.animal;

import java.util.List;

/** A newcomer as it is registered: what can be corrected later, and the first readings, which stay. */
record Registration(AnimalDetails details, List<WeightReading> weights, List<LengthReading> lengths) {}
