package varanid.intake.worklist;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/** The beginning of both lists. */
@Schema(name = "Worklist")
record Morning(LocalDate asOf, Beginning<ActNowItem> actNow, Beginning<RoundsItem> rounds) {

    /**
     * The beginning of one list.
     *
     * @param path where the whole list is
     * @param more whether it goes on after these
     */
    @Schema(name = "WorklistBeginning")
    record Beginning<T>(String path, List<T> items, boolean more) {

        static <T> Beginning<T> of(String list, List<T> oneMore, int most) {
            boolean more = oneMore.size() > most;
            return new Beginning<>("/api/v1/worklist/" + list, more ? oneMore.subList(0, most) : oneMore, more);
        }
    }
}
