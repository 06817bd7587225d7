package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.Maps;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.inference.Member.Candidate;
import org.geneticsrules.inference.Member.Parents;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Sex;

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
    private final Map<String, Integer> numbers;

    /** What the kits of a litter share. */
    private final IdentityHashMap<Litter, Parents> litters = new IdentityHashMap<>();

    private int broodCount;

    private Members(Pedigree pedigree, Optional<String> population, Kept kept) {
        this.pedigree = pedigree;
        this.population = population;
        this.kept = kept;
        this.numbers = Maps.newHashMapWithExpectedSize(pedigree.individuals().size());
        for (String id : pedigree.order()) {
            if (!kept.concerns(id)) {
                continue;
            }
            Individual individual = kept.recorded(pedigree.individual(id));
            Optional<Parents> parents = pedigree.litterOf(id).map(litter -> parents(individual, litter));
            Optional<String> from = parents.isPresent()
                    ? Optional.empty()
                    : individual.population().or(() -> population);
            numbers.put(id, all.size());
            add(new Member(Optional.of(individual), sex(individual), from, parents));
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
        return Objects.requireNonNull(numbers.get(id), id);
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

    private Parents parents(Individual kit, Litter litter) {
        Parents shared = litters.get(litter);
        if (shared == null) {
            boolean perKit = litter.sires() instanceof Paternity.Candidates several && several.perKit();
            List<Candidate> sires = candidates(kit, litter);
            int dam = dam(litter)
                    .map(this::number)
                    .orElseGet(() -> unrecorded(Sex.FEMALE, kit.population().or(() -> other(litter))));
            shared = new Parents(dam, sires, broodCount++, perKit);
            litters.put(litter, shared);
        } else if (shared.perKit()) {
            return new Parents(shared.dam(), shared.sires(), broodCount++, true);
        }
        return shared;
    }

    private List<Candidate> candidates(Individual kit, Litter litter) {
        Optional<String> from = kit.population().or(() -> ofDam(litter));
        if (litter.sires() instanceof Paternity.Candidates several) {
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
        int male = sire(litter).map(this::number).orElseGet(() -> unrecorded(Sex.MALE, from));
        return ImmutableList.of(new Candidate(male, 1));
    }

    private Optional<String> ofDam(Litter litter) {
        return dam(litter).flatMap(dam -> origin(number(dam)));
    }

    private Optional<String> dam(Litter litter) {
        return litter.dam().filter(dam -> kept.dam(litter));
    }

    private Optional<String> sire(Litter litter) {
        return litter.sires() instanceof Paternity.Known known && kept.sires(litter)
                ? Optional.of(known.sire())
                : Optional.empty();
    }

    private Optional<String> other(Litter litter) {
        return sire(litter).flatMap(sire -> origin(number(sire)));
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
