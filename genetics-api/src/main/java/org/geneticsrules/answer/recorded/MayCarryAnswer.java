package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.MayCarry.AtLocus;
import org.geneticsrules.answer.recorded.MayCarry.OfAllele;
import org.geneticsrules.answer.recorded.MayCarry.OfPair;
import org.geneticsrules.answer.recorded.MayCarry.Word;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Pedigree;

/** Puts together what one animal may be. */
final class MayCarryAnswer {

    private static final int MOST_LISTED = 6;

    private final Ground ground;
    private final String animal;
    private final Set<String> loci;
    private final Pedigree kindred;
    private final Draft draft;

    MayCarryAnswer(Ground ground, String animal, Collection<String> asked) {
        this.ground = ground;
        this.animal = animal;
        this.loci = asked.isEmpty() ? ground.model().loci().keySet() : ImmutableSet.copyOf(asked);
        this.loci.forEach(ground.model()::locus); // names the nearest if there is none
        this.kindred = Kindreds.of(ground.pedigree()).around(List.of(animal));
        this.draft = new Draft(ground);
    }

    RecordedAnswer answer() {
        List<Weighed<Conclusions>> weighed =
                ground.weigh(kindred, inference -> inference.conclude(loci), draft.notices);
        Animal own = OwnRecords.of(ground.compiled(), kindred.individual(animal));
        Optional<Answer> coat = OwnRecords.coat(ground.answers(), own);
        ImmutableList.Builder<AtLocus> each = ImmutableList.builder();
        for (String locus : loci) {
            each.add(at(ground.model().locus(locus), weighed, OwnRecords.hidden(coat, own, locus)));
        }
        List<Origin> origins = weighed.stream().map(Weighed::origin).toList();
        MayCarry found = new MayCarry(animal, origins, each.build());
        complete(found, own, coat, origins);
        return draft.answer("may carry", "What may " + RecordWords.quoted(animal) + " carry?", verdict(found), found);
    }

    private void complete(MayCarry found, Animal own, Optional<Answer> coat, List<Origin> origins) {
        draft.given.addAll(new RecordWords(kindred).facts(animal));
        draft.given.add(
                "related animals in the pedigree: " + (kindred.individuals().size() - 1));
        draft.rest(kindred, loci, origins);
        draft.notices(kindred, ground.inference(kindred).notices());
        if (found.loci().stream()
                .flatMap(at -> at.alleles().stream())
                .anyMatch(one -> one.word() == Word.CONTRADICTED)) {
            draft.conflicts(kindred, ground.inference(kindred).contradictions());
        }
        if (origins.isEmpty()) {
            draft.undecided();
        }
        draft.raise(coat);
        draft.raise(Situation.of("carriers").with(Role.ANIMAL, OwnRecords.looks(own)));
    }

    private AtLocus at(Locus locus, List<Weighed<Conclusions>> weighed, Optional<Hidden> hidden) {
        Map<AllelePair, Possibility> possible =
                ground.inference(kindred).possible(locus.id()).of(animal);
        List<OfPair> pairs = new ArrayList<>();
        possible.forEach((pair, possibility) -> pairs.add(new OfPair(
                pair,
                possibility,
                weighed.stream()
                        .map(one -> Chance.of(one.found(), animal, locus.id(), pair::equals))
                        .toList())));
        List<OfAllele> alleles = new ArrayList<>();
        for (Allele allele : locus.alleles().values()) {
            List<Chance> chances = weighed.stream()
                    .map(one -> Chance.carries(one.found(), animal, new HiddenAllele(locus.id(), allele)))
                    .toList();
            draft.settled(chances);
            Word word = word(possible, allele.id());
            if (word == Word.UNDECIDED || word == Word.CONTRADICTED) {
                draft.undecided();
            }
            alleles.add(new OfAllele(allele, word, chances));
        }
        AtLocus plain = new AtLocus(locus.id(), pairs, alleles, Optional.empty());
        return new AtLocus(locus.id(), pairs, alleles, hidden.flatMap(one -> stillHidden(one, plain.left())));
    }

    /** What a look hides and the records of relatives do not tell either. */
    private static Optional<Hidden> stillHidden(Hidden hidden, List<AllelePair> left) {
        List<AllelePair> both =
                hidden.alternatives().stream().filter(left::contains).toList();
        return both.size() > 1
                ? Optional.of(new Hidden(hidden.locus(), hidden.phenotype(), both, Optional.empty(), hidden.causes()))
                : Optional.empty();
    }

    private static Word word(Map<AllelePair, Possibility> possible, String allele) {
        boolean with = false;
        boolean without = false;
        boolean open = false;
        for (Map.Entry<AllelePair, Possibility> one : possible.entrySet()) {
            if (one.getValue() instanceof Possibility.Contradicted) {
                return Word.CONTRADICTED;
            }
            open |= one.getValue() instanceof Possibility.Undecided;
            if (one.getValue() instanceof Possibility.Possible) {
                with |= one.getKey().has(allele);
                without |= !one.getKey().has(allele);
            }
        }
        if (with && without) {
            return Word.MAY_CARRY;
        }
        if (open) {
            return Word.UNDECIDED;
        }
        return with ? Word.CARRIES : Word.CANNOT_CARRY;
    }

    private String verdict(MayCarry found) {
        if (!draft.conflicts.isEmpty()
                || found.loci().stream()
                        .flatMap(at -> at.alleles().stream())
                        .anyMatch(one -> one.word() == Word.CONTRADICTED)) {
            return "The records of " + RecordWords.quoted(animal)
                    + " and its relatives cannot all be true under this model, so nothing can be concluded from all of them"
                    + " together. Re-examine the records named, or the model.";
        }
        String carries = listed(found, Word.CARRIES);
        String may = listed(found, Word.MAY_CARRY);
        String open = listed(found, Word.UNDECIDED);
        List<String> parts = new ArrayList<>();
        if (!carries.isEmpty()) {
            parts.add("carries " + carries);
        }
        if (!may.isEmpty()) {
            parts.add("may carry " + may);
        }
        if (!open.isEmpty()) {
            parts.add("was not settled about " + open);
        }
        return "By all records " + RecordWords.quoted(animal) + " "
                + (parts.isEmpty()
                        ? "carries nothing but the common alleles at the loci asked about"
                        : String.join(", ", parts))
                + ".";
    }

    /** The alleles of a word, those of the wild type left out, with how likely they are. */
    private String listed(MayCarry found, Word word) {
        List<String> alleles = new ArrayList<>();
        for (AtLocus at : found.loci()) {
            Locus locus = ground.model().locus(at.locus());
            Allele common =
                    locus.wildType().orElse(locus.alleles().values().iterator().next());
            for (OfAllele one : at.alleles()) {
                if (one.word() == word && !one.allele().equals(common)) {
                    alleles.add(one.allele().title().orElse(one.allele().symbol())
                            + (word == Word.MAY_CARRY ? range(one.chances()) : ""));
                }
            }
        }
        String more = alleles.size() > MOST_LISTED ? " and " + (alleles.size() - MOST_LISTED) + " more" : "";
        return alleles.stream().limit(MOST_LISTED).collect(Collectors.joining(", ")) + more;
    }

    /** As in " (2/3 (66.67 %))", or from the least to the greatest. */
    static String range(List<Chance> chances) {
        List<Chance> settled = chances.stream()
                .filter(Chance::isSettled)
                .sorted(Comparator.comparing(chance -> chance.value().orElseThrow()))
                .toList();
        if (settled.isEmpty()) {
            return "";
        }
        String low = settled.get(0).toString();
        String high = settled.get(settled.size() - 1).toString();
        return low.equals(high) ? ": " + low : ": " + low + " to " + high;
    }
}
