package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Ascertainment.AtLeastOne;
import org.geneticsrules.pedigree.Ascertainment.Probands;
import org.geneticsrules.trait.Sighting;

/** Tells which litters are heard of, by what was written down of their kits, and states that of each. */
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
        if (how instanceof Ascertainment.ParentsChosen) {
            throw new IllegalArgumentException("litters of parents chosen by an earlier kit are not drawn, but \"" + how
                    + "\" was asked for; draw the earlier litter as well, kept because at least one kit shows it");
        }
        if (how instanceof Ascertainment.Unknown) {
            throw new IllegalArgumentException("what is drawn came to be recorded in a known way, but \"" + how
                    + "\" was asked for; expected complete, at least one, or probands");
        }
    }

    /** The looks at which a sign may be written down. */
    static List<PlannedLook> telling(Model model, List<PlannedLook> looks, Sighting sign) {
        return looks.stream()
                .filter(look -> look.isOf(sign)
                        && Recorder.told(model, look).containsAll(sign.look().traits()))
                .toList();
    }

    private static Ascertainment at(PlannedLook look, Ascertainment how) {
        if (how instanceof Probands some) {
            return new Probands(look.seeing(some.sign().look()), some.chance(), some.count());
        }
        return how instanceof AtLeastOne one
                ? new AtLeastOne(look.seeing(one.sign().look()))
                : how;
    }

    /** Tells which kits brought their litter to notice; empty if it is not heard of. */
    Optional<List<DrawnAnimal>> probands(List<DrawnAnimal> kits, Chance chance) {
        if (sign.isEmpty()) {
            return Optional.of(ImmutableList.of());
        }
        List<DrawnAnimal> probands = kits.stream()
                .filter(kit -> kit.isRecordedWith(sign.get()) && chance.happens(noticed))
                .collect(ImmutableList.toImmutableList());
        return probands.isEmpty() ? Optional.empty() : Optional.of(probands);
    }

    /** How a litter with some probands came to be recorded. */
    Ascertainment stated(List<DrawnAnimal> probands) {
        return how instanceof Probands some
                ? new Probands(some.sign(), some.chance(), OptionalInt.of(probands.size()))
                : how;
    }
}
