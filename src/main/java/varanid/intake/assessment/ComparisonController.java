package varanid.intake.assessment;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/assessments/{id}/comparison")
@Tag(name = "Assessments")
class ComparisonController {

    private final AssessmentRows rows;
    private final StoredLooks stored;

    ComparisonController(AssessmentRows rows, StoredLooks stored) {
        this.rows = rows;
        this.stored = stored;
    }

    @GetMapping
    @Operation(
            summary = "What is new, worse, better or gone since an earlier look, and when to call",
            description = "With another look of the animal, else with the last one before it that was not superseded."
                    + " Whichever occurred first is the one before. What was not seen is never counted as gone.")
    @Parameter(
            name = "with",
            in = ParameterIn.QUERY,
            description = "another assessment of this animal, by the same checklist",
            schema = @Schema(type = "string", format = "uuid"))
    @Transactional(readOnly = true)
    public ResponseEntity<ComparisonView> comparison(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        Given<UUID> with = query.id("with");
        query.orThrow();
        AssessmentRow row = rows.find(caller.organisationId(), animalId, id)
                .orElseThrow(() -> ProblemException.notFound("assessment"));
        Optional<AssessmentRow> other =
                with.isGiven() ? Optional.of(other(caller, row, with.get())) : before(caller, row);
        if (other.isEmpty()) {
            return ResponseEntity.ok(ComparisonView.first(stored.read(row)));
        }
        List<AssessmentRow> inOrder = List.of(row, other.get()).stream()
                .sorted(Comparator.comparing(AssessmentRow::occurredAt)
                        .thenComparing(each -> each.id().toString()))
                .toList();
        return ResponseEntity.ok(ComparisonView.of(stored.read(inOrder.get(0)), stored.read(inOrder.get(1))));
    }

    private AssessmentRow other(Caller caller, AssessmentRow row, UUID with) {
        AssessmentRow other = rows.find(caller.organisationId(), row.animalId(), with)
                .orElseThrow(() -> refused("is no assessment of this animal", "the id of one of its assessments"));
        if (!other.checklistId().equals(row.checklistId())) {
            throw refused(
                    "was made by the checklist " + other.checklistId(),
                    "an assessment by " + row.checklistId() + ", of any version");
        }
        return other;
    }

    private Optional<AssessmentRow> before(Caller caller, AssessmentRow row) {
        Instant occurredAt = row.occurredAt();
        return rows
                .listStandingBefore(
                        caller.organisationId(), row.animalId(), row.checklistId(), occurredAt, row.id(), Limit.of(1))
                .stream()
                .findFirst();
    }

    private static ProblemException refused(String wrong, String right) {
        return new ProblemException(
                ProblemType.INVALID_REQUEST,
                "There is nothing there to compare with.",
                List.of(Fault.inParameter("with", wrong, right)));
    }
}
