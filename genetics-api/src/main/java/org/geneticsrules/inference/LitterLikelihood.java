package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.inference.Groups.Way;
import org.geneticsrules.inference.MatingTables.Pairs;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * How likely the kits of two parents are to be recorded as they were, for very many litters under one model ({@link Inference#litters}).
 *
 * <pre>{@code
 * LitterLikelihood litters = Inference.of(compiled, pedigree).from("even").litters();
 * LitterLikelihood.Seen sire = litters.sire(hob);
 * LitterLikelihood.Seen dam = litters.dam(jill);
 * double log = litters.log(sire, dam, List.of(litters.kit(first), litters.kit(second)));
 * }</pre>
 *
 * <p>Parents are founders: of their populations, and unrelated. Several litters of the same parents are one, with all their kits. What the
 * records of an animal say is worked out once for all that were recorded alike, and what pairs of parents hand down once for all in which
 * the same is left; a litter is then a sum over pairs of parents at each unit of linked loci. Where records tie units to one another, or a
 * sex that is not known matters, the litter is looked at as a pedigree of its own.
 *
 * <p>Not thread-safe: each thread has one of its own.
 */
public final class LitterLikelihood {

    /** A product smaller than this is worked out in logarithms. */
    private static final double SMALL = 1e-280;

    private enum Role {
        SIRE,
        DAM,
        KIT
    }

    /** What distinguishes records: all but ids and dates. */
    private record Key(
            Role role, Optional<Sex> sex, Optional<String> population, List<Object> looks, List<Object> tests) {}

    private final Inference inference;
    private final Map<Key, Seen> seen = new HashMap<>();
    private final Map<List<String>, Integer> units = new HashMap<>();
    private final List<MatingTables> tables = new ArrayList<>();
    private final List<Boolean> differ = new ArrayList<>();
    private double[] product = {};

    /** What was recorded of an animal, in its place in a litter. */
    public static final class Seen {

        private final LitterLikelihood owner;
        private final Role role;
        private final Individual individual;

        /** By unit, what is known of it by itself; null if units are tied. */
        private final Known @Nullable [] known;

        private final boolean female;
        private final double log;

        private Seen(
                LitterLikelihood owner, Role role, Individual individual, Known @Nullable [] known, boolean female) {
            this.owner = owner;
            this.role = role;
            this.individual = individual;
            this.known = known;
            this.female = female;
            double sum = 0;
            if (known != null) {
                for (Known one : known) {
                    sum += one.log();
                }
            }
            this.log = sum;
        }
    }

    LitterLikelihood(Inference inference) {
        this.inference = inference;
    }

    /**
     * Takes in what was recorded of a sire.
     *
     * @param male the male
     * @return his records, for any number of litters
     * @throws org.geneticsrules.problem.ProblemsException if the records name what the model does not know, or he has no population
     */
    public Seen sire(Individual male) {
        return take(Role.SIRE, male.with(Sex.MALE));
    }

    /**
     * Takes in what was recorded of a dam.
     *
     * @param female the female
     * @return her records, for any number of litters
     * @throws org.geneticsrules.problem.ProblemsException if the records name what the model does not know, or she has no population
     */
    public Seen dam(Individual female) {
        return take(Role.DAM, female.with(Sex.FEMALE));
    }

    /**
     * Takes in what was recorded of a kit.
     *
     * @param kit the kit
     * @return its records, for any number of litters
     * @throws org.geneticsrules.problem.ProblemsException if the records name what the model does not know
     */
    public Seen kit(Individual kit) {
        return take(Role.KIT, kit);
    }

    private Seen take(Role role, Individual one) {
        List<Object> looks = new ArrayList<>(2);
        one.observations().forEach(look -> {
            looks.add(look.stage());
            looks.add(look.light());
            looks.add(look.looks());
        });
        List<Object> tests = new ArrayList<>(0);
        one.tests().forEach(test -> {
            tests.add(test.locus());
            tests.add(test.result());
            tests.add(test.error());
        });
        return seen.computeIfAbsent(
                new Key(role, one.sex(), one.population(), looks, tests), key -> workOut(role, one));
    }

    private Seen workOut(Role role, Individual one) {
        Individual anyone = Individual.of("anyone");
        Individual other = one.population().map(anyone::from).orElse(anyone);
        Inference asked = inference.about(pedigree(
                role == Role.SIRE ? one : other,
                role == Role.DAM ? one : other,
                List.of(role == Role.KIT ? one : Individual.of("kit", Sex.FEMALE))));
        // who a kit's parents are makes no difference to what is known of it by itself
        Groups question = role == Role.KIT ? asked.unweighed() : asked.question(asked.loci());
        Members members = question.members();
        int member = members.number(role.name());
        Families families = Families.of(members, question.kinds());
        Map<Integer, Known> known = new HashMap<>();
        boolean tied = false;
        for (int g = 0; g < question.count(); g++) {
            Layout layout = question.layout(g);
            OwnWeights alone = question.alone(g, layout);
            Way[] ways = question.ways(g, layout, alone, families, Way.UNIT_BY_UNIT);
            tied |= ways[families.part[member]] != Way.UNIT_BY_UNIT;
            for (int u = 0; u < layout.heredity().size() && !tied; u++) {
                int unit = number(layout.heredity().get(u));
                known.put(unit, tables.get(unit).known(alone.of(member, List.of(u))));
            }
        }
        Known @Nullable [] all = null;
        if (!tied) {
            all = new Known[known.size()];
            for (int unit = 0; unit < all.length; unit++) {
                all[unit] = Objects.requireNonNull(known.get(unit));
            }
        }
        return new Seen(this, role, one, all, !one.sex().equals(Optional.of(Sex.MALE)));
    }

    private int number(Heredity heredity) {
        return units.computeIfAbsent(
                heredity.unit().loci().stream().map(Locus::id).toList(), key -> {
                    MatingTables made = new MatingTables(List.of(heredity));
                    tables.add(made);
                    differ.add(made.differ());
                    return units.size();
                });
    }

    /**
     * Returns how likely a litter is to be recorded as it was, with its parents.
     *
     * @param sire the records of the sire
     * @param dam the records of the dam
     * @param kits the records of the kits
     * @return the natural logarithm of the chance of all that was recorded, given the sexes of the parents; negative infinity if the records
     *     contradict one another
     * @throws IllegalArgumentException if one is in the place of another, or was taken in by another object than this
     * @throws TooLargeException if records tie so many loci that an exact answer takes more room than allowed ({@link Inference#within})
     */
    public double log(Seen sire, Seen dam, List<Seen> kits) {
        require(sire, Role.SIRE);
        require(dam, Role.DAM);
        boolean separate = sire.known != null && dam.known != null;
        double log = sire.log + dam.log;
        for (Seen kit : kits) {
            require(kit, Role.KIT);
            separate &= kit.known != null;
            log += kit.log;
        }
        if (!separate) {
            return together(sire, dam, kits);
        }
        for (int unit = 0; unit < tables.size(); unit++) {
            log += log(unit, sire, dam, kits);
        }
        return log;
    }

    /**
     * Tells whether the records of an animal tie units of linked loci to one another, so that each litter with it is worked out as a pedigree
     * of its own, which takes some thousand times as long.
     *
     * @param one the records of an animal
     * @return true if they do
     */
    public boolean ties(Seen one) {
        return one.known == null;
    }

    private void require(Seen one, Role role) {
        if (one.owner != this) {
            throw new IllegalArgumentException(
                    "records taken in elsewhere, under other assumptions or by another thread");
        }
        if (one.role != role) {
            throw new IllegalArgumentException(
                    "the records of a " + word(one.role) + " stand in the place of those of a " + word(role));
        }
    }

    private static String word(Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }

    private static Known known(Seen one, int unit) {
        if (one.known == null) {
            throw new IllegalStateException("its units are tied");
        }
        return one.known[unit];
    }

    private double log(int unit, Seen sire, Seen dam, List<Seen> kits) {
        Known ofSire = known(sire, unit);
        Known ofDam = known(dam, unit);
        Pairs pairs = tables.get(unit).of(ofSire, ofDam);
        int size = pairs.size();
        product = product.length < size ? new double[2 * size] : product;
        int dams = ofDam.states().length;
        for (int pair = 0; pair < size; pair++) {
            product[pair] = ofSire.weights()[pair / dams] * ofDam.weights()[pair % dams];
        }
        for (int k = 0; k < kits.size(); k++) {
            Seen kit = kits.get(k);
            double[] one = pairs.leaf(kit.female || !differ.get(unit), known(kit, unit))
                    .likelihoods();
            if (one == null) {
                continue;
            }
            for (int pair = 0; pair < size; pair++) {
                double next = product[pair] * one[pair];
                if (next < SMALL && product[pair] > 0 && one[pair] > 0) {
                    return inLogarithms(unit, sire, dam, kits);
                }
                product[pair] = next;
            }
        }
        double sum = 0;
        for (int pair = 0; pair < size; pair++) {
            sum += product[pair];
        }
        return Math.log(sum);
    }

    /** The same where kits make the chance of a pair of parents too small a number: a later kit may rule out all others. */
    private double inLogarithms(int unit, Seen sire, Seen dam, List<Seen> kits) {
        Known ofSire = known(sire, unit);
        Known ofDam = known(dam, unit);
        Pairs pairs = tables.get(unit).of(ofSire, ofDam);
        int dams = ofDam.states().length;
        double[] logs = new double[pairs.size()];
        double most = Double.NEGATIVE_INFINITY;
        for (int pair = 0; pair < logs.length; pair++) {
            logs[pair] = Math.log(ofSire.weights()[pair / dams]) + Math.log(ofDam.weights()[pair % dams]);
            for (Seen kit : kits) {
                double[] one = pairs.leaf(kit.female || !differ.get(unit), known(kit, unit))
                        .likelihoods();
                logs[pair] += one == null ? 0 : Math.log(one[pair]);
            }
            most = Math.max(most, logs[pair]);
        }
        if (most == Double.NEGATIVE_INFINITY) {
            return most;
        }
        double sum = 0;
        for (double one : logs) {
            sum += Math.exp(one - most);
        }
        return most + Math.log(sum);
    }

    private double together(Seen sire, Seen dam, List<Seen> kits) {
        Inference alone = inference.about(pedigree(
                sire.individual,
                dam.individual,
                kits.stream().map(kit -> kit.individual).toList()));
        Conclusions found = alone.conclude();
        for (String locus : inference.loci()) {
            for (Role role : kits.isEmpty() ? List.of(Role.SIRE, Role.DAM) : List.of(Role.values())) {
                Conclusions.Standing standing = found.standing(role.name(), locus);
                if (standing != Conclusions.Standing.EXACT && standing != Conclusions.Standing.CONTRADICTED) {
                    throw new TooLargeException(
                            "cells of tables, since the records of a litter with " + kits.size()
                                    + " kits tie many loci together",
                            alone.costs(inference.loci()).stream()
                                    .mapToDouble(Cost::cells)
                                    .max()
                                    .orElse(0),
                            alone.mostCells(),
                            "ask about fewer traits, or fewer kits of a litter");
                }
            }
        }
        return found.logLikelihood();
    }

    private static Pedigree pedigree(Individual sire, Individual dam, List<Individual> kits) {
        var builder = Pedigree.builder("litter", "1")
                .add(called(Role.SIRE.name(), sire.with(Sex.MALE)))
                .add(called(Role.DAM.name(), dam.with(Sex.FEMALE)));
        String[] ids = new String[kits.size()];
        for (int k = 0; k < ids.length; k++) {
            ids[k] = k == 0 ? Role.KIT.name() : Role.KIT + " " + k;
            builder.add(called(ids[k], kits.get(k)));
        }
        return builder.add(Litter.of("litter", Role.DAM.name(), Role.SIRE.name(), ids))
                .build();
    }

    private static Individual called(String id, Individual one) {
        return new Individual(
                id,
                one.sex(),
                Optional.empty(),
                one.population(),
                one.observations(),
                one.names(),
                one.tests(),
                List.of(),
                one.fertility());
    }
}
