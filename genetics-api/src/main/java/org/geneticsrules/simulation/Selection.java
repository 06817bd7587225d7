package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Ascertainment.AtLeastOne;
import org.geneticsrules.pedigree.Ascertainment.ParentsChosen;
import org.geneticsrules.pedigree.Ascertainment.Probands;
import org.geneticsrules.trait.Sighting;

/** Tells which litters are heard of, by what was written down of their kits or of an earlier one, and states that of each. */
final class Selection {

    private final Ascertainment how;
    private final Optional<Sighting> sign;
    private final double noticed;

    /** A sign that is written down at one of the looks alone is told with what is known of that look. */
    Selection(Ascertainment stated, Model model, List<PlannedLook> looks) {
        List<PlannedLook> telling = stated.noticedBy().stream()
                .flatMap(seen -> telling(model, looks, seen).stream())
                .toList();
        this.how = telling.size() == 1 ? at(telling.get(0), stated) : stated;
        this.sign = how.noticedBy();
        this.noticed = how instanceof Probands some ? some.chance().toDouble() : 1;
    }

    /** Refuses what nothing can be drawn by. */
    static void check(Ascertainment how) {
        if (how instanceof Probands some && some.count().isPresent()) {
            throw new IllegalArgumentException("how many probands a litter has is drawn, but "
                    + some.count().getAsInt() + " were asked for; expected probands without a count");
        }
        if (how instanceof Ascertainment.Unknown) {
            throw new IllegalArgumentException("what is drawn came to be recorded in a known way, but \"" + how
                    + "\" was asked for; expected complete, at least one, probands, or parents chosen");
        }
    }

    /** What a kit of the litter itself has to show; empty if none has to. */
    static Optional<Sighting> signOfKits(Ascertainment how) {
        return how instanceof ParentsChosen ? Optional.empty() : how.noticedBy();
    }

    /** The looks at which a sign may be written down of kits. */
    static List<PlannedLook> telling(Model model, List<PlannedLook> looks, Sighting sign) {
        return telling(model, looks, sign, Whom.KITS);
    }

    /** The looks at which something may be written down of founders, or of kits. */
    static List<PlannedLook> telling(Model model, List<PlannedLook> looks, Sighting sign, Whom whom) {
        return looks.stream()
                .filter(look -> look.whom().include(whom == Whom.FOUNDERS)
                        && look.isOf(sign)
                        && Recorder.told(model, look).containsAll(sign.look().traits()))
                .toList();
    }

    private static Ascertainment at(PlannedLook look, Ascertainment how) {
        if (how instanceof Probands some) {
            return new Probands(look.seeing(some.sign().look()), some.chance(), some.count());
        }
        if (how instanceof ParentsChosen chosen) {
            return new ParentsChosen(look.seeing(chosen.sign().look()));
        }
        return how instanceof AtLeastOne one
                ? new AtLeastOne(look.seeing(one.sign().look()))
                : how;
    }

    /**
     * Because of whom a litter is known.
     *
     * @param probands those of its kits
     * @param earlier a kit that its parents had before, if they were chosen by one
     */
    record Known(List<DrawnAnimal> probands, Optional<DrawnAnimal> earlier) {}

    /**
     * Tells because of whom a litter is known; empty if it is not heard of.
     *
     * @param kits the kits
     * @param earlier draws one more kit of these parents, who had it before; empty if they can have none
     * @param chance where chance comes from
     */
    Optional<Known> known(List<DrawnAnimal> kits, Supplier<Optional<DrawnAnimal>> earlier, Chance chance) {
        if (sign.isEmpty()) {
            return Optional.of(new Known(ImmutableList.of(), Optional.empty()));
        }
        if (how instanceof ParentsChosen) {
            return earlier.get()
                    .filter(kit -> kit.isRecordedWith(sign.get()))
                    .map(kit -> new Known(ImmutableList.of(), Optional.of(kit)));
        }
        List<DrawnAnimal> probands = kits.stream()
                .filter(kit -> kit.isRecordedWith(sign.get()) && chance.happens(noticed))
                .collect(ImmutableList.toImmutableList());
        return probands.isEmpty() ? Optional.empty() : Optional.of(new Known(probands, Optional.empty()));
    }

    /** How a litter with some probands came to be recorded. */
    Ascertainment stated(List<DrawnAnimal> probands) {
        return how instanceof Probands some
                ? new Probands(some.sign(), some.chance(), OptionalInt.of(probands.size()))
                : how;
    }
}
