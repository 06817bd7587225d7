package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.inference.Member.Candidate;
import org.geneticsrules.inference.Member.Parents;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Links;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.RecordKinds;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * The animals of a pedigree, each after its parents; a parent who is not recorded is an animal of its own, one for each litter.
 *
 * <p>An unrecorded parent is of the population that its kits state, else of that of the other parent, else of the one that is named for
 * all.
 */
final class Members {

    private final Pedigree pedigree;
    private final Optional<String> population;
    private final Kept kept;
    private final List<Member> all = new ArrayList<>();
    private final List<Optional<String>> origins = new ArrayList<>();

    /** By position in the pedigree, the number of an animal. */
    private final int[] numbers;

    /** By position in the pedigree, what the kits of a litter share. */
    private final @Nullable Parents[] litters;

    private final RecordKinds recordKinds;

    /** By animal, the kind of its records. */
    private final int[] recorded;

    private int broodCount;
    private boolean uncertain;

    private Members(Pedigree pedigree, Optional<String> population, Kept kept) {
        this.pedigree = pedigree;
        this.population = population;
        this.kept = kept;
        Links links = pedigree.links();
        this.numbers = new int[links.count()];
        Arrays.fill(numbers, Links.NONE);
        this.litters = new Parents[pedigree.litters().size()];
        for (int i = 0; i < links.count(); i++) {
            int at = links.inOrder(i);
            Individual stated = pedigree.individualAt(at);
            if (!kept.concerns(stated.id())) {
                continue;
            }
            Individual individual = kept.recorded(stated);
            int litter = links.litterOf(at);
            Optional<Parents> parents =
                    litter == Links.NONE ? Optional.empty() : Optional.of(parents(individual, litter));
            Optional<String> from = parents.isPresent()
                    ? Optional.empty()
                    : individual.population().or(() -> population);
            numbers[at] = all.size();
            add(new Member(Optional.of(individual), sex(individual), from, parents));
        }
        boolean asRecorded = kept == Kept.ALL;
        this.recordKinds = asRecorded
                ? pedigree.recordKinds()
                : RecordKinds.of(all.stream()
                        .flatMap(member -> member.recorded().stream())
                        .toList());
        this.recorded = new int[all.size()];
        if (asRecorded) {
            for (int at = 0; at < numbers.length; at++) {
                recorded[numbers[at]] = recordKinds.of(at);
            }
        } else {
            int next = 0;
            for (int m = 0; m < recorded.length; m++) {
                recorded[m] = all.get(m).recorded().isPresent() ? recordKinds.of(next++) : 0;
            }
        }
    }

    static Members of(Pedigree pedigree, Optional<String> population) {
        return of(pedigree, population, Kept.ALL);
    }

    /** The animals of a pedigree of whose records only some are taken to be true. */
    static Members of(Pedigree pedigree, Optional<String> population, Kept kept) {
        return new Members(pedigree, population, kept);
    }

    List<Member> all() {
        return all;
    }

    /** How many choices of a sire there may be. */
    int broods() {
        return broodCount;
    }

    int number(String id) {
        int number = numbers[pedigree.positionOf(id)];
        if (number == Links.NONE) {
            throw new IllegalStateException(id + " is not looked at");
        }
        return number;
    }

    /** Whether the sire of some kit is not certain. */
    boolean hasUncertain() {
        return uncertain;
    }

    /** The kinds of what was recorded of animals. */
    RecordKinds recordKinds() {
        return recordKinds;
    }

    /** The kind of what was recorded of an animal. */
    int recordKind(int member) {
        return recorded[member];
    }

    private Optional<Sex> sex(Individual individual) {
        if (individual.sex().isPresent()) {
            return individual.sex();
        }
        for (Litter litter : pedigree.littersOf(individual.id())) {
            boolean dam = litter.dam().filter(individual.id()::equals).isPresent();
            if (dam ? kept.dam(litter) : kept.sires(litter)) {
                return Optional.of(dam ? Sex.FEMALE : Sex.MALE);
            }
        }
        return Optional.empty();
    }

    private Parents parents(Individual kit, int number) {
        Parents shared = litters[number];
        if (shared == null) {
            Litter litter = pedigree.litterAt(number);
            boolean perKit = litter.sires() instanceof Paternity.Candidates several && several.perKit();
            List<Candidate> sires = candidates(kit, litter, number);
            int dam = dam(litter, number);
            if (dam == Links.NONE) {
                dam = unrecorded(Sex.FEMALE, kit.population().or(() -> ofSire(litter, number)));
            }
            shared = new Parents(dam, sires, broodCount++, perKit);
            uncertain |= !shared.isCertain();
            litters[number] = shared;
        } else if (shared.perKit()) {
            return new Parents(shared.dam(), shared.sires(), broodCount++, true);
        }
        return shared;
    }

    private List<Candidate> candidates(Individual kit, Litter litter, int number) {
        if (litter.sires() instanceof Paternity.Candidates several) {
            Optional<String> from = kit.population().or(() -> ofDam(litter, number));
            return several.candidates().stream()
                    .map(one -> new Candidate(
                            one.male()
                                    .filter(male -> kept.sires(litter))
                                    .map(this::number)
                                    .orElseGet(() -> unrecorded(
                                            Sex.MALE, one.population().or(() -> from))),
                            one.share().toDouble()))
                    .collect(ImmutableList.toImmutableList());
        }
        int sire = sire(litter, number);
        if (sire == Links.NONE) {
            sire = unrecorded(Sex.MALE, kit.population().or(() -> ofDam(litter, number)));
        }
        return ImmutableList.of(new Candidate(sire, 1));
    }

    private Optional<String> ofDam(Litter litter, int number) {
        int dam = dam(litter, number);
        return dam == Links.NONE ? Optional.empty() : origin(dam);
    }

    private Optional<String> ofSire(Litter litter, int number) {
        int sire = sire(litter, number);
        return sire == Links.NONE ? Optional.empty() : origin(sire);
    }

    private int dam(Litter litter, int number) {
        int dam = pedigree.links().dam(number);
        return dam != Links.NONE && kept.dam(litter) ? numbers[dam] : Links.NONE;
    }

    private int sire(Litter litter, int number) {
        return litter.sires() instanceof Paternity.Known && kept.sires(litter)
                ? numbers[pedigree.links().male(number, 0)]
                : Links.NONE;
    }

    /** The population of an animal, or that which its ancestors in the female line are from. */
    private Optional<String> origin(int number) {
        return origins.get(number);
    }

    private void add(Member member) {
        Optional<String> own = member.recorded().flatMap(Individual::population).or(member::population);
        // the dam came before, so that a line of any length is followed
        origins.add(own.or(() -> member.parents().flatMap(parents -> origin(parents.dam()))));
        all.add(member);
    }

    private int unrecorded(Sex sex, Optional<String> from) {
        add(new Member(Optional.empty(), Optional.of(sex), from.or(() -> population), Optional.empty()));
        return all.size() - 1;
    }
}
