package varanid.intake.sample;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A sample for whoever reads a page about the animal. Kinds, methods, outcomes and agents are codes.
 *
 * @param freshHours whole hours between passing and taking
 * @param outcome what its standing results come to
 * @param awaited methods asked for that have no result yet
 * @param results that stand
 */
public record SampleWords(
        String kind,
        LocalDate takenOn,
        Optional<Integer> freshHours,
        String outcome,
        List<String> awaited,
        List<ResultWords> results,
        Optional<String> note) {

    public SampleWords {
        awaited = List.copyOf(awaited);
        results = List.copyOf(results);
    }

    /**
     * What one method found.
     *
     * @param agents that it names
     * @param report what the laboratory wrote, verbatim
     */
    public record ResultWords(
            String method,
            String outcome,
            List<String> agents,
            LocalDate reportedOn,
            Optional<String> laboratory,
            Optional<String> report) {}

    static SampleWords of(SampleFile sample) {
        SampleRow row = sample.row();
        return new SampleWords(
                row.kind(),
                row.localDate(),
                Optional.ofNullable(row.freshHours()),
                sample.outcome().code(),
                sample.awaited(),
                sample.standingResults().stream()
                        .map(result -> new ResultWords(
                                result.row().method(),
                                result.row().outcome(),
                                result.found().stream().map(Found::agent).toList(),
                                result.row().reportedOn(),
                                Optional.ofNullable(result.row().laboratory()),
                                Optional.ofNullable(result.row().report())))
                        .toList(),
                Optional.ofNullable(row.note()));
    }
}
