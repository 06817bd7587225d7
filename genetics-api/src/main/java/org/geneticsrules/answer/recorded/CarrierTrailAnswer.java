package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.CarrierTrail.Step;
import org.geneticsrules.answer.recorded.CarrierTrail.Trail;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.RecordRef;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Pedigree;

/** Puts together how likely an animal is to carry an allele, record by record. */
final class CarrierTrailAnswer {

    /** The animals of a kindred times the records that are added one by one, for all origins together. */
    private static final int MOST_WORK = 2_000_000;

    /** Steps that are smaller than rounding are none. */
    private static final double ROUNDING = 1e-11;

    private final Ground ground;
    private final String animal;
    private final HiddenAllele allele;
    private final Pedigree kindred;
    private final Prefixes prefixes;
    private final RecordWords words;
    private final Draft draft;

    CarrierTrailAnswer(Ground ground, String animal, HiddenAllele allele) {
        this.ground = ground;
        this.animal = animal;
        this.allele = allele;
        this.kindred = Kindreds.of(ground.pedigree()).around(List.of(animal));
        this.prefixes = new Prefixes(kindred);
        this.words = new RecordWords(kindred);
        this.draft = new Draft(ground);
    }

    RecordedAnswer answer() {
        Set<String> loci = Set.of(allele.locus());
        List<Weighed<Conclusions>> weighed =
                ground.weigh(kindred, inference -> inference.conclude(loci), draft.notices);
        int together = together(weighed.size());
        List<Trail> trails = weighed.stream()
                .map(one -> trail(one.origin(), together, chance(one.found())))
                .toList();
        CarrierTrail found = new CarrierTrail(animal, allele, prefixes.order(), trails);
        draft.given.addAll(words.facts(animal));
        draft.given.add("looks and tests recorded of it and its relatives: "
                + prefixes.records().size());
        draft.rest(kindred, loci, weighed.stream().map(Weighed::origin).toList());
        draft.notices(kindred, ground.inference(kindred).notices());
        if (trails.isEmpty()) {
            draft.undecided();
        }
        if (trails.stream().anyMatch(trail -> trail.after().standing() == Standing.CONTRADICTED)) {
            draft.conflicts(kindred, ground.inference(kindred).contradictions());
        }
        Animal own = OwnRecords.of(ground.compiled(), kindred.individual(animal));
        draft.raise(Situation.of("carriers").with(Role.ANIMAL, OwnRecords.looks(own)));
        return draft.answer(
                "carrier trail",
                "How likely is " + RecordWords.quoted(animal) + " to carry " + allele.words()
                        + ", and which records tell?",
                verdict(found),
                found);
    }

    /** How many of the first records are added at once, because there are too many to add one by one. */
    private int together(int origins) {
        int steps = MOST_WORK / Math.max(1, kindred.individuals().size() * Math.max(1, origins));
        int together = Math.max(0, prefixes.records().size() - Math.max(1, steps));
        if (together > 0) {
            draft.notices.add(
                    "the first " + together + " of " + prefixes.records().size()
                            + " records are taken together, because there are too many to go through one by one");
        }
        return together;
    }

    private Chance chance(Conclusions found) {
        return Chance.carries(found, animal, allele);
    }

    private Trail trail(Origin origin, int together, Chance end) {
        Chance before = after(origin, 0, end);
        List<Step> steps = new ArrayList<>();
        List<RecordRef> pending = new ArrayList<>();
        Chance last = before;
        int still = 0;
        for (int count = 1; count <= prefixes.records().size(); count++) {
            pending.add(prefixes.records().get(count - 1));
            if (count < together) {
                continue;
            }
            Chance now = after(origin, count, end);
            boolean contradicted = now.standing() == Standing.CONTRADICTED;
            if (!now.isSettled() && !contradicted && count < prefixes.records().size()) {
                continue; // further records may bring it back within reach
            }
            if (last.isSettled() && now.isSettled() && isStill(last, now)) {
                still += pending.size();
            } else {
                steps.add(new Step(words.cited(pending), now, factor(last, now)));
            }
            pending.clear();
            last = now;
            if (contradicted) {
                break;
            }
        }
        draft.settled(end.standing());
        return new Trail(origin, before, steps, still, end);
    }

    private Chance after(Origin origin, int count, Chance end) {
        return count == prefixes.records().size()
                ? end
                : chance(ground.estimating(prefixes.first(count), origin).conclude(Set.of(allele.locus())));
    }

    private static boolean isStill(Chance one, Chance other) {
        double a = one.value().orElseThrow();
        double b = other.value().orElseThrow();
        return Math.abs(a - b) <= ROUNDING * Math.min(Math.max(a, b), Math.max(1 - a, 1 - b));
    }

    private static OptionalDouble factor(Chance from, Chance to) {
        if (!from.isSettled() || !to.isSettled()) {
            return OptionalDouble.empty();
        }
        double a = from.value().orElseThrow();
        double b = to.value().orElseThrow();
        return a == 0 || b == 1 || a == 1 ? OptionalDouble.empty() : OptionalDouble.of(b / (1 - b) * (1 - a) / a);
    }

    private String verdict(CarrierTrail found) {
        String who = RecordWords.quoted(animal);
        List<Chance> ends = found.trails().stream().map(Trail::after).toList();
        if (ends.stream().anyMatch(end -> end.standing() == Standing.CONTRADICTED)) {
            return "The records of " + who
                    + " and its relatives cannot all be true under this model, so that no chance follows from all of them"
                    + " together. Re-examine the records named, or the model.";
        }
        if (ends.stream().noneMatch(Chance::isSettled)) {
            return found.trails().isEmpty()
                    ? "How likely " + who + " is to carry " + allele.words()
                            + " cannot be said without frequencies; see what it may carry."
                    : "How likely " + who + " is to carry " + allele.words()
                            + " was not calculated: too much ties its relatives together.";
        }
        return "By all records " + who + " carries " + allele.words() + " with a chance of"
                + MayCarryAnswer.range(ends).substring(1) + "; before any record, "
                + MayCarryAnswer.range(
                                found.trails().stream().map(Trail::before).toList())
                        .replaceFirst("^: ", "")
                + ".";
    }
}
