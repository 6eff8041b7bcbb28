package varanid.intake.visit;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * A document bundle while it is filled. Every id in it follows from the animal and from what the resource is, so that the
 * same summary always gives the same document.
 */
final class FhirDocument {

    private final UUID animalId;
    private final FhirObject patient;
    private final List<FhirObject> entries = new ArrayList<>();

    /** An empty one about an animal, whose own resource is still to be {@linkplain #add added} with the animal's id. */
    FhirDocument(UUID animalId) {
        this.animalId = animalId;
        this.patient = referenceTo(animalId);
    }

    /** Who it is about. */
    FhirObject patient() {
        return patient;
    }

    /** An id for something of this animal that has none of its own. */
    UUID id(String of) {
        return UUID.nameUUIDFromBytes((animalId + "/" + of).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * @param resource complete but for its id
     * @return what refers to it
     */
    FhirObject add(UUID id, FhirObject resource) {
        entries.add(entry(id, resource));
        return referenceTo(id);
    }

    /** The whole, with what tells a reader how to read it in front. */
    FhirObject bundle(UUID id, Instant madeAt, List<FhirObject> links, FhirObject composition) {
        List<FhirObject> all = new ArrayList<>();
        all.add(entry(id("composition/" + id), composition));
        all.addAll(entries);
        return FhirObject.resource("Bundle")
                .with("id", id.toString())
                .with("identifier", FhirCode.uuid(id.toString()))
                .with("type", "document")
                .with("timestamp", madeAt)
                .with("link", links)
                .with("entry", all);
    }

    private static FhirObject entry(UUID id, FhirObject resource) {
        return FhirObject.of().with("fullUrl", "urn:uuid:" + id).with("resource", resource.withId(id.toString()));
    }

    private static FhirObject referenceTo(UUID id) {
        return FhirObject.of().with("reference", "urn:uuid:" + id);
    }
}
