package varanid.intake.page.worklist;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.worklist.WorklistViews.ActNowItem;
import varanid.intake.worklist.WorklistViews.AnimalView;
import varanid.intake.worklist.WorklistViews.BecauseView;
import varanid.intake.worklist.WorklistViews.DueView;
import varanid.intake.worklist.WorklistViews.Links;
import varanid.intake.worklist.WorklistViews.NextView;
import varanid.intake.worklist.WorklistViews.RoomView;
import varanid.intake.worklist.WorklistViews.RoundsItem;

/**
 * One animal on a list.
 *
 * @param label its name, else its tag; nothing where it has neither
 * @param tag what stands on its cage, where the label does not say it already
 * @param urgency how soon a vet, as a code; nothing where nobody has looked
 * @param headline the same in words, where the list has them
 * @param changes the path to what the last look found to be other than the one before; nothing where there is none
 * @param because why, the weightiest first
 */
public record Row(
        UUID id,
        @Nullable String label,
        @Nullable String tag,
        @Nullable String room,
        @Nullable String urgency,
        @Nullable String headline,
        boolean worse,
        @Nullable String changes,
        List<BecauseView> because,
        List<DueView> due,
        boolean moreDue,
        @Nullable NextView next,
        LocalDate asOf) {

    static Row of(ActNowItem item, Map<UUID, String> tags) {
        return new Row(
                item.animal().id(),
                item.animal().label(),
                tag(item.animal(), tags),
                name(item.room()),
                item.urgency(),
                item.headline(),
                item.worse(),
                changes(item.animal(), item.links()),
                item.because(),
                item.due(),
                item.moreDue(),
                item.next(),
                item.asOf());
    }

    static Row of(RoundsItem item, Map<UUID, String> tags) {
        return new Row(
                item.animal().id(),
                item.animal().label(),
                tag(item.animal(), tags),
                name(item.room()),
                item.urgency(),
                null,
                item.worse(),
                changes(item.animal(), item.links()),
                List.of(),
                item.due(),
                item.moreDue(),
                item.next(),
                item.asOf());
    }

    private static @Nullable String changes(AnimalView animal, Links links) {
        @Nullable UUID look = links.comparedLook();
        return look == null ? null : "/animals/" + animal.id() + "/looks/" + look + "#changed";
    }

    private static @Nullable String tag(AnimalView animal, Map<UUID, String> tags) {
        @Nullable String tag = tags.get(animal.id());
        return tag == null || tag.equals(animal.label()) ? null : tag;
    }

    private static @Nullable String name(@Nullable RoomView room) {
        return room == null ? null : room.name();
    }

    /** The end of the id, which tells apart those that have neither name nor tag. */
    public String shortId() {
        return id.toString().substring(28);
    }

    /** How a task stands on the day of the list: the end of a text's key. */
    public String state(DueView task) {
        if (task.daysLate() > 0) {
            return "overdue";
        }
        return task.latest().equals(asOf) ? "last-day" : "due";
    }
}
