package varanid.intake.visit;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.ReaderDates;

/**
 * A document bundle while it is filled. Every id in it follows from the animal and from what the resource is, so that the
 * same summary always gives the same document.
 */
final class FhirDocument {

    private final UUID animalId;
    private final ZoneId zone;
    private final HandOverTexts texts;
    private final List<FhirObject> entries = new ArrayList<>();

    /** An empty one: the animal's own resource and the author's are still to be {@linkplain #add added} with their ids. */
    FhirDocument(Summary summary, HandOverTexts texts) {
        this.animalId = summary.animal().id();
        this.zone = summary.zone();
        this.texts = texts;
    }

    HandOverTexts texts() {
        return texts;
    }

    /** An empty narrative. */
    FhirNarrative narrative() {
        return new FhirNarrative(zone, texts);
    }

    /** A moment as people of the organisation say it. */
    @Nullable
    String when(@Nullable Instant moment) {
        return moment == null ? null : ReaderDates.PAPER.shortMoment(moment, zone);
    }

    /** Refers to the animal. */
    FhirObject patient() {
        return referenceTo(animalId);
    }

    UUID authorId() {
        return id("author");
    }

    /** Refers to this service. */
    FhirObject author() {
        return referenceTo(authorId());
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
