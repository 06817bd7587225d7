package org.geneticsrules.pedigree;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.PartialDate;

/** Checks that the records of a pedigree fit together. */
final class PedigreeChecks {

    /** Kits of one litter may be born over several days; no kit is born this long after the first. */
    private static final int DAYS_OF_BIRTH = 7;

    /** In more names than these the nearest is sought among those only that begin alike. */
    private static final int FEW = 1_000;

    private final Map<String, Individual> individuals;
    private final Map<String, Litter> litters;
    private final List<Litter> litterList;
    private final List<Correction> corrections;

    PedigreeChecks(PedigreeBuilder stated) {
        this.individuals = stated.individuals;
        this.litters = stated.litters;
        this.litterList = new ArrayList<>(litters.values());
        this.corrections = stated.corrections;
    }

    static String pointer(Individual individual) {
        return Pointer.of("individuals", individual.id());
    }

    static String pointer(Litter litter) {
        return Pointer.of("litters", litter.id());
    }

    /** Where a litter names one of its possible sires: by what the document calls the place. */
    static String sirePointer(Litter litter, String male) {
        if (litter.sires() instanceof Paternity.Candidates several) {
            for (int i = 0; i < several.candidates().size(); i++) {
                if (several.candidates().get(i).male().filter(male::equals).isPresent()) {
                    return pointer(litter) + Pointer.of("sires", "candidates", Integer.toString(i), "male");
                }
            }
        }
        return pointer(litter) + "/sire";
    }

    /** Ends the stage of references. */
    void references() {
        Problems problems = new Problems(Stage.REFERENCES);
        for (Litter litter : litters.values()) {
            litter.dam().ifPresent(dam -> known(dam, "unknown-parent", "dam", pointer(litter) + "/dam", problems));
            for (String male : litter.sires().males()) {
                known(male, "unknown-parent", "sire", sirePointer(litter, male), problems);
            }
            litter.fosterDam()
                    .ifPresent(dam ->
                            known(dam, "unknown-foster-dam", "foster dam", pointer(litter) + "/fosterDam", problems));
            for (int i = 0; i < litter.kits().size(); i++) {
                known(litter.kits().get(i), "unknown-kit", "kit", kitPointer(litter, i), problems);
            }
        }
        problems.throwIfAny();
    }

    private static String kitPointer(Litter litter, int kit) {
        return pointer(litter) + Pointer.of("kits", Integer.toString(kit));
    }

    private void known(String id, String code, String what, String pointer, Problems problems) {
        if (!individuals.containsKey(id)) {
            problems.unknown(code, pointer, what, id, near(id));
        }
    }

    /** Among many names, comparing each letter by letter would be slow; those that begin alike are most likely meant. */
    private List<String> near(String id) {
        Set<String> all = individuals.keySet();
        if (all.size() <= FEW) {
            return new ArrayList<>(all);
        }
        String start = id.substring(0, id.offsetByCodePoints(0, 1));
        return all.stream()
                .filter(name -> name.startsWith(start) && Math.abs(name.length() - id.length()) <= 1)
                .limit(FEW)
                .toList();
    }

    /** Ends the stage of meaning; a pedigree that passes has an order. */
    Links meaning() {
        Problems problems = new Problems(Stage.MEANING);
        kits(problems);
        boolean oneLitterEach = problems.list().isEmpty();
        for (Litter litter : litters.values()) {
            counts(litter, problems);
            roles(litter, problems);
        }
        twoRoles(problems);
        individuals.values().forEach(individual -> alone(individual, problems));
        Trail.check(individuals, litters, corrections, problems);
        if (!oneLitterEach) { // then it is not known who comes from whom
            problems.throwIfAny();
        }
        Links links = Links.of(individuals.values(), litters.values());
        dates(links, problems);
        new Ancestry(links, new ArrayList<>(individuals.keySet()), litterList).check(problems);
        problems.throwIfAny();
        return links;
    }

    private void kits(Problems problems) {
        Map<String, String> litterOf = new HashMap<>();
        for (Litter litter : litters.values()) {
            for (int i = 0; i < litter.kits().size(); i++) {
                String kit = litter.kits().get(i);
                String other = litterOf.putIfAbsent(kit, litter.id());
                if (other != null) {
                    problems.add(
                            "two-litters",
                            kitPointer(litter, i),
                            other.equals(litter.id())
                                    ? "\"" + kit + "\" is listed twice in this litter"
                                    : "\"" + kit + "\" is in the litters \"" + other + "\" and \"" + litter.id() + "\"",
                            "each individual in one litter at most, once");
                }
            }
        }
    }

    private static void counts(Litter litter, Problems problems) {
        OptionalInt born = litter.bornCount();
        OptionalInt scored = litter.scoredCount();
        int kits = litter.kits().size();
        if (born.isPresent() && scored.isPresent() && scored.getAsInt() > born.getAsInt()) {
            problems.add(
                    "counts-differ",
                    pointer(litter) + "/scoredCount",
                    scored.getAsInt() + " kits were scored, but " + born.getAsInt() + " born",
                    "at most as many scored as born");
        } else if (kits > (scored.isPresent() ? scored : born).orElse(Integer.MAX_VALUE)) {
            problems.add(
                    "counts-differ",
                    pointer(litter) + "/kits",
                    kits + " kits are listed, but "
                            + (scored.isPresent() ? scored.getAsInt() + " scored" : born.orElseThrow() + " born"),
                    "no more kits than were counted");
        }
        Sign.of(litter.ascertainment()).ifPresent(sign -> noticed(litter, sign, problems));
    }

    /** A kit that brought its litter to notice was scored; and since something is known of it, it is listed. */
    private static void noticed(Litter litter, Sign sign, Problems problems) {
        String pointer = pointer(litter) + Pointer.of("ascertainment", sign.key());
        OptionalInt counted = litter.scoredCount().isPresent() ? litter.scoredCount() : litter.bornCount();
        boolean stated = litter.ascertainment() instanceof Ascertainment.Probands some
                && some.count().isPresent();
        if (sign.least() > counted.orElse(Integer.MAX_VALUE)) {
            problems.add(
                    "counts-differ",
                    stated ? pointer + "/count" : pointer,
                    (stated ? sign.least() + " kits" : "a kit") + " brought the litter to notice, but "
                            + counted.getAsInt() + (litter.scoredCount().isPresent() ? " scored" : " born"),
                    "no more kits that showed the sign than were counted");
        } else if (stated && sign.least() > litter.kits().size()) {
            problems.add(
                    "counts-differ",
                    pointer + "/count",
                    sign.least() + " kits brought the litter to notice, but "
                            + litter.kits().size() + " listed",
                    "each of these kits listed, with what it showed");
        }
    }

    private void roles(Litter litter, Problems problems) {
        litter.dam().ifPresent(dam -> role(dam, Sex.FEMALE, "the dam", pointer(litter) + "/dam", problems));
        litter.sires().males().forEach(male -> role(male, Sex.MALE, "a sire", sirePointer(litter, male), problems));
        litter.fosterDam().ifPresent(dam -> {
            role(dam, Sex.FEMALE, "a foster dam", pointer(litter) + "/fosterDam", problems);
            if (litter.dam().filter(dam::equals).isPresent()) {
                problems.add(
                        "foster-is-dam",
                        pointer(litter) + "/fosterDam",
                        "\"" + dam + "\" is the dam herself",
                        "a foster dam only where another female raised the litter");
            }
        });
    }

    private void role(String id, Sex needed, String what, String pointer, Problems problems) {
        individual(id)
                .sex()
                .filter(sex -> sex != needed)
                .ifPresent(sex -> problems.add(
                        "parent-sex",
                        pointer,
                        "\"" + id + "\" is recorded as " + sex.word() + " and cannot be " + what,
                        "a " + needed.word()));
    }

    private Individual individual(String id) {
        Individual found = individuals.get(id);
        if (found == null) {
            throw new IllegalStateException("\"" + id + "\" was checked to be recorded");
        }
        return found;
    }

    /** One of no recorded sex that stands as dam in one place and as sire in another. */
    private void twoRoles(Problems problems) {
        Map<String, String> damOf = new HashMap<>();
        for (Litter litter : litters.values()) {
            litter.dam().ifPresent(dam -> damOf.putIfAbsent(dam, litter.id()));
            litter.fosterDam().ifPresent(dam -> damOf.putIfAbsent(dam, litter.id()));
        }
        for (Litter litter : litters.values()) {
            for (String male : litter.sires().males()) {
                String other = damOf.get(male);
                if (other != null && individual(male).sex().isEmpty()) {
                    problems.add(
                            "two-roles",
                            sirePointer(litter, male),
                            "\"" + male + "\" is a sire here and a dam of the litter \"" + other + "\"",
                            "one or the other");
                }
            }
        }
    }

    private void dates(Links links, Problems problems) {
        for (Litter litter : litters.values()) {
            Optional<LocalDate> first = litter.born();
            for (int i = 0; i < litter.kits().size(); i++) {
                Optional<LocalDate> kit = individual(litter.kits().get(i)).born();
                if (litter.born().isPresent() && kit.isPresent()) {
                    LocalDate day = litter.born().get();
                    if (kit.get().isBefore(day) || kit.get().isAfter(day.plusDays(DAYS_OF_BIRTH))) {
                        problems.add(
                                "birth-dates-differ",
                                kitPointer(litter, i),
                                "\"" + litter.kits().get(i) + "\" was born on " + kit.get() + ", but its litter on "
                                        + day,
                                "a kit born on the day of its litter or within " + DAYS_OF_BIRTH + " days");
                    }
                }
                if (kit.isPresent() && (first.isEmpty() || kit.get().isBefore(first.get()))) {
                    first = kit;
                }
            }
            if (first.isPresent()) {
                LocalDate day = first.get();
                litter.dam().ifPresent(dam -> older(dam, day, pointer(litter) + "/dam", links, problems));
                litter.sires().males().forEach(male -> older(male, day, sirePointer(litter, male), links, problems));
                litter.fosterDam().ifPresent(dam -> older(dam, day, pointer(litter) + "/fosterDam", links, problems));
            }
        }
    }

    private void older(String parent, LocalDate young, String pointer, Links links, Problems problems) {
        born(parent, links)
                .filter(born -> !born.isBefore(young))
                .ifPresent(born -> problems.add(
                        "parent-younger",
                        pointer,
                        "\"" + parent + "\" was born on " + born + ", the litter on " + young,
                        "a parent that is older than its young"));
    }

    private Optional<LocalDate> born(String id, Links links) {
        Optional<LocalDate> own = individual(id).born();
        int litter = links.litterOf[links.at(id)];
        return own.isPresent() || litter == Links.NONE
                ? own
                : litterList.get(litter).born();
    }

    /** What is recorded of one individual alone. */
    private static void alone(Individual individual, Problems problems) {
        if (individual.fertility() == Fertility.VASECTOMISED
                && individual.sex().filter(sex -> sex == Sex.FEMALE).isPresent()) {
            problems.add(
                    "fertility-sex",
                    pointer(individual) + "/fertility",
                    "\"" + individual.id() + "\" is recorded as female and as vasectomised",
                    "a male, or neutered");
        }
        if (individual.born().isEmpty()) {
            return;
        }
        LocalDate born = individual.born().get();
        for (int i = 0; i < individual.observations().size(); i++) {
            before(
                    individual,
                    born,
                    "observations",
                    i,
                    individual.observations().get(i).date(),
                    problems);
        }
        for (int i = 0; i < individual.names().size(); i++) {
            before(
                    individual,
                    born,
                    "names",
                    i,
                    individual.names().get(i).date().map(PartialDate::last),
                    problems);
        }
        for (int i = 0; i < individual.tests().size(); i++) {
            before(individual, born, "tests", i, individual.tests().get(i).date(), problems);
        }
        for (int i = 0; i < individual.hearing().size(); i++) {
            before(individual, born, "hearing", i, individual.hearing().get(i).date(), problems);
        }
    }

    private static void before(
            Individual individual, LocalDate born, String list, int item, Optional<LocalDate> date, Problems problems) {
        date.filter(day -> day.isBefore(born))
                .ifPresent(day -> problems.add(
                        "before-birth",
                        pointer(individual) + Pointer.of(list, Integer.toString(item), "date"),
                        "the record is of " + day + ", but \"" + individual.id() + "\" was born on " + born,
                        "a date from birth on"));
    }
}
