package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.inference.Contradiction;
import org.geneticsrules.inference.RecordRef;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** Says in words what records say. */
final class RecordWords {

    /** A name may cover thousands of looks; more than this are not listed one by one. */
    private static final int MOST_LOOKS = 4;

    private final Pedigree pedigree;

    RecordWords(Pedigree pedigree) {
        this.pedigree = pedigree;
    }

    Conflict conflict(Contradiction contradiction) {
        return new Conflict(contradiction.records().stream().map(this::cited).toList(), contradiction.smallest());
    }

    Cited cited(RecordRef record) {
        return new Cited(record, pointer(record), words(record));
    }

    List<Cited> cited(List<RecordRef> records) {
        return records.stream().map(this::cited).collect(ImmutableList.toImmutableList());
    }

    private String pointer(RecordRef record) {
        if (record instanceof RecordRef.Observed one) {
            Individual of = pedigree.individual(one.individual());
            return of.observations()
                    .get(one.index())
                    .name()
                    .map(name -> Pointer.of(
                            "individuals",
                            one.individual(),
                            "names",
                            Integer.toString(of.names().indexOf(name))))
                    .orElse(Pointer.of("individuals", one.individual(), "observations", Integer.toString(one.index())));
        }
        if (record instanceof RecordRef.Tested one) {
            return Pointer.of("individuals", one.individual(), "tests", Integer.toString(one.index()));
        }
        if (record instanceof RecordRef.SexOf one) {
            return Pointer.of("individuals", one.individual(), "sex");
        }
        if (record instanceof RecordRef.DamOf one) {
            return Pointer.of("litters", one.litter(), "dam");
        }
        String litter = ((RecordRef.SiresOf) record).litter();
        return Pointer.of("litters", litter, litter(litter).sires() instanceof Paternity.Known ? "sire" : "sires");
    }

    private String words(RecordRef record) {
        if (record instanceof RecordRef.Observed one) {
            Observation seen =
                    pedigree.individual(one.individual()).observations().get(one.index());
            return seen.name()
                    .map(name ->
                            "that " + quoted(one.individual()) + " was called " + name + ", which says " + looks(seen))
                    .orElseGet(() -> "the look of " + quoted(one.individual()) + " (" + said(seen) + ")");
        }
        if (record instanceof RecordRef.Tested one) {
            return "the test of " + quoted(one.individual()) + " ("
                    + said(pedigree.individual(one.individual()).tests().get(one.index())) + ")";
        }
        if (record instanceof RecordRef.SexOf one) {
            return "the recorded sex of " + quoted(one.individual())
                    + pedigree.individual(one.individual())
                            .sex()
                            .map(sex -> " (" + sex.word() + ")")
                            .orElse("");
        }
        if (record instanceof RecordRef.DamOf one) {
            Litter litter = litter(one.litter());
            return "the recorded dam " + quoted(litter.dam().orElse("")) + " of " + kits(litter);
        }
        Litter litter = litter(((RecordRef.SiresOf) record).litter());
        List<String> males = litter.sires().males();
        return (males.size() == 1 ? "the recorded sire " : "that one of the recorded males ")
                + males.stream().map(RecordWords::quoted).collect(Collectors.joining(", "))
                + (males.size() == 1 ? " of " : " is a sire of ")
                + kits(litter);
    }

    private Litter litter(String id) {
        return Objects.requireNonNull(pedigree.litters().get(id), id);
    }

    private static String kits(Litter litter) {
        return "litter " + quoted(litter.id());
    }

    /** What was seen, and when; or what it was called, and what that says. */
    static String said(Observation seen) {
        if (seen.name().isPresent()) {
            return "called " + seen.name().get() + ", which says " + looks(seen);
        }
        return looks(seen)
                + (seen.stage().equals(LifeStage.unstated()) ? "" : ", at " + seen.stage())
                + seen.light().map(light -> ", in " + light).orElse("")
                + seen.date().map(date -> ", seen " + date).orElse("");
    }

    /** What was seen, or each thing that may have been; of very many, which states of each trait they show. */
    private static String looks(Observation seen) {
        if (seen.looks().size() <= MOST_LOOKS) {
            return seen.looks().stream().map(Object::toString).collect(Collectors.joining(" or "));
        }
        return seen.traits().stream()
                .map(trait -> trait + " "
                        + seen.looks().stream()
                                .flatMap(look -> look.state(trait).stream())
                                .distinct()
                                .collect(Collectors.joining(" or ")))
                .collect(Collectors.joining(", ", "one of " + seen.looks().size() + " looks (", ")"));
    }

    /** What was reported, and how sure that is. */
    static String said(GenotypeTest test) {
        return "locus " + test.locus() + ": " + String.join(" or ", test.result())
                + test.date().map(date -> ", reported " + date).orElse("")
                + (test.error().equals(Probability.ZERO) ? "" : ", wrong in " + test.error() + " of cases");
    }

    /** What is recorded of an animal itself, and who its parents are, fact by fact. */
    List<String> facts(String id) {
        Individual one = pedigree.individual(id);
        ImmutableList.Builder<String> facts = ImmutableList.builder();
        String who = quoted(id);
        one.sex().ifPresent(sex -> facts.add(who + ": " + sex.word()));
        pedigree.bornOf(id).ifPresent(date -> facts.add(who + ": born " + date));
        Optional<Litter> litter = pedigree.litterOf(id);
        litter.ifPresent(known -> facts.add(who + ": " + parents(known)));
        if (litter.isEmpty()) {
            facts.add(who + ": no parents recorded");
        }
        one.population().ifPresent(origin -> facts.add(who + ": population " + origin));
        one.observations().forEach(seen -> facts.add(who + ": " + said(seen)));
        one.names().stream()
                .filter(name -> one.observations().stream()
                        .noneMatch(seen -> seen.name().filter(name::equals).isPresent()))
                .forEach(name -> facts.add(who + ": called " + name));
        one.tests().forEach(test -> facts.add(who + ": test of " + said(test)));
        one.hearing()
                .forEach(test -> facts.add(who + ": hearing, left ear "
                        + test.left().word() + ", right ear "
                        + test.right().word()
                        + test.date().map((LocalDate date) -> ", " + date).orElse("")));
        return facts.build();
    }

    private static String parents(Litter litter) {
        String sire = litter.sires() instanceof Paternity.Unknown
                ? "a sire who is not recorded"
                : litter.sires() instanceof Paternity.Known known
                        ? "sire " + quoted(known.sire())
                        : "one of several possible sires";
        return "of litter " + quoted(litter.id()) + ", "
                + litter.dam().map(dam -> "dam " + quoted(dam)).orElse("a dam who is not recorded") + ", " + sire;
    }

    static String quoted(String id) {
        return "\"" + id + "\"";
    }

    /** The animal as a parent of its sex. */
    static String role(Sex sex) {
        return sex == Sex.FEMALE ? "dam" : "sire";
    }
}
