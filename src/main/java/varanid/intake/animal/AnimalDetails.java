package varanid.intake.animal;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is known about an animal and can be corrected: all of it may be missing.
 *
 * @param name what people call it
 * @param tag what stands on its cage
 * @param species genus and species as listed, or as given where it is not
 * @param authority who described the species
 * @param declaredOrigin a CITES source code
 * @param evidence answers by question id
 * @param transponder as {@link Transponder} has it
 */
record AnimalDetails(
        @Nullable String name,
        @Nullable String tag,
        @Nullable String species,
        @Nullable String authority,
        LifeStage lifeStage,
        Sex sex,
        @Nullable String declaredOrigin,
        Map<String, Evidence> evidence,
        List<Paper> papers,
        @Nullable String transponder,
        @Nullable UUID consignmentId,
        @Nullable LocalDate arrivedOn,
        @Nullable String notes) {

    AnimalDetails {
        // The database keeps no order of names; this way it is the same before and after.
        evidence = Collections.unmodifiableSortedMap(new TreeMap<>(evidence));
        papers = List.copyOf(papers);
    }
}
