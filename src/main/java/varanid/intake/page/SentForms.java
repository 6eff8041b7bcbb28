package varanid.intake.page;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.SentForm;

/** Keeps what a form says, once for the form's key, in one transaction. */
@Component
public class SentForms {

    /** The field with a form's own key, of which its effect happens once. */
    public static final String KEY = "key";

    private final Once once;

    SentForms(Once once) {
        this.once = once;
    }

    /**
     * What became of a form.
     *
     * @param next where to go on; empty where it was not kept
     * @param faults what is wrong, by field
     * @param sentBefore whether its key was sent before with something else in it: somebody went back and changed it
     */
    public record Outcome(Optional<String> next, Map<String, List<String>> faults, boolean sentBefore) {}

    /**
     * The key that a form is shown again with: its own, as long as nothing was kept under it; else a new one. Where a page
     * has several forms, each writes its own word before the key; that is left out.
     */
    public static String nextKey(SentForm form, boolean sentBefore) {
        return form.key(KEY)
                .filter(key -> !sentBefore)
                .map(key -> key.substring(key.lastIndexOf(' ') + 1))
                .orElseGet(() -> UUID.randomUUID().toString());
    }

    /** Keeps it once for the form's own key, or says why not: as below. */
    public Outcome keep(
            Caller caller,
            String target,
            SentForm form,
            JsonNode document,
            Function<JsonRequest, String> keeping,
            Map<String, String> fieldOf) {
        return keep(caller, target, form.key(KEY).orElse(null), document, keeping, fieldOf);
    }

    /**
     * Keeps it, or says why not.
     *
     * @param target method and path that it was sent to
     * @param key the form's own; null where sending it twice is to happen twice
     * @param keeping does it, and says where to go on
     * @param fieldOf the fields that are not called as the request calls them, by the pointer's beginning
     * @throws ProblemException where something is wrong that is not in a field
     */
    public Outcome keep(
            Caller caller,
            String target,
            @Nullable String key,
            JsonNode document,
            Function<JsonRequest, String> keeping,
            Map<String, String> fieldOf) {
        JsonRequest request = JsonRequest.ofForm(target, document, key);
        try {
            // Where to go on is what is kept under the key, and given again where it is sent twice.
            String next = Objects.requireNonNull(once.perform(
                            caller, request, () -> new Reply(303, Map.of("Location", keeping.apply(request)), Map.of()))
                    .getHeaders()
                    .getFirst("Location"));
            return new Outcome(Optional.of(next), Map.of(), false);
        } catch (ProblemException e) {
            if (e.type().equals(ProblemType.KEY_REUSED)) {
                return new Outcome(Optional.empty(), Map.of(), true);
            }
            return new Outcome(Optional.empty(), Faults.byField(e, fieldOf), false);
        }
    }
}
