package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.Arrays;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/** From the gametes of two parents to the chances of what their kits carry and show: the states of both chains side by side. */
final class Fertilisation {

    /** More pairs of strands and crossover patterns than this are not followed. */
    private static final int MOST_STATES = 1024;

    private final Unit unit;
    private final Sex kit;
    private final Gametes sire;
    private final Gametes dam;

    Fertilisation(Unit unit, Sex kit, Gametes sire, Gametes dam) {
        this.unit = unit;
        this.kit = kit;
        this.sire = sire;
        this.dam = dam;
        if ((long) sire.states() * dam.states() > MOST_STATES) {
            throw new TooLargeException(
                    "pairs of crossover patterns in group " + unit.name(),
                    (double) sire.states() * dam.states(),
                    MOST_STATES,
                    "ask about fewer loci of the group, or state recombination fractions.");
        }
    }

    /** What the kits show at each locus. */
    Chain expressions() {
        return chain(
                (locus, pair) -> locus.expressionPosition(pair, kit),
                locus -> locus.expressions().size());
    }

    /** What the kits carry at each locus, as positions among the locus' pairs. */
    Chain pairs() {
        return chain(
                (locus, pair) -> locus.pairs().indexOf(pair),
                locus -> locus.pairs().size());
    }

    private interface Seen {
        int of(Locus locus, AllelePair pair);
    }

    private interface Width {
        int of(Locus locus);
    }

    private Chain chain(Seen seen, Width width) {
        BigInteger[][][] shows = new BigInteger[unit.loci().size()][][];
        for (int l = 0; l < shows.length; l++) {
            Locus locus = unit.loci().get(l);
            BigInteger[][] rows = new BigInteger[sire.states() * dam.states()][];
            for (int s = 0; s < sire.states(); s++) {
                for (int d = 0; d < dam.states(); d++) {
                    rows[s * dam.states() + d] =
                            row(locus, sire.alleles()[l][s], dam.alleles()[l][d], seen, width.of(locus));
                }
            }
            shows[l] = reduced(rows);
        }
        if (shows.length == 1 && shows[0].length == 1) {
            return Chain.single(unit.loci().get(0).id(), shows[0][0]);
        }
        BigInteger[][][] steps = new BigInteger[shows.length - 1][][];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = sideBySide(sire.steps()[i], dam.steps()[i]);
        }
        BigInteger[] start = sideBySide(new BigInteger[][] {sire.start()}, new BigInteger[][] {dam.start()})[0];
        return Chain.of(unit.names(), start, steps, shows);
    }

    private BigInteger[] row(Locus locus, BigInteger[] fromSire, BigInteger[] fromDam, Seen seen, int width) {
        BigInteger[] shares = new BigInteger[width];
        Arrays.fill(shares, BigInteger.ZERO);
        Transmission way = unit.transmission();
        boolean mine = way.passes(Sex.MALE, kit);
        boolean theirs = way.passes(Sex.FEMALE, kit);
        if (mine && theirs) {
            for (int a = 0; a < fromSire.length; a++) {
                for (int b = 0; b < fromDam.length && fromSire[a].signum() > 0; b++) {
                    add(shares, seen.of(locus, locus.pair(a, b)), fromSire[a].multiply(fromDam[b]));
                }
            }
        } else if (mine || theirs) {
            BigInteger[] passed = mine ? fromSire : fromDam;
            for (int a = 0; a < passed.length; a++) {
                add(shares, seen.of(locus, locus.of(a)), passed[a]);
            }
        } else {
            add(shares, seen.of(locus, locus.of()), BigInteger.ONE);
        }
        return shares;
    }

    private static void add(BigInteger[] shares, int at, BigInteger weight) {
        if (weight.signum() > 0) {
            shares[at] = shares[at].add(weight);
        }
    }

    /** The Kronecker product of two steps. */
    private static BigInteger[][] sideBySide(BigInteger[][] one, BigInteger[][] other) {
        BigInteger[][] both = new BigInteger[one.length * other.length][one[0].length * other[0].length];
        for (int i = 0; i < both.length; i++) {
            for (int j = 0; j < both[i].length; j++) {
                both[i][j] = one[i / other.length][j / other[0].length].multiply(
                        other[i % other.length][j % other[0].length]);
            }
        }
        return both;
    }

    /** Divides the rows of one locus by what they have in common. */
    private static BigInteger[][] reduced(BigInteger[][] rows) {
        BigInteger common = BigInteger.ZERO;
        for (BigInteger[] row : rows) {
            for (BigInteger share : row) {
                common = common.gcd(share);
            }
        }
        BigInteger divisor = common;
        if (divisor.bitLength() > 1) {
            for (BigInteger[] row : rows) {
                Arrays.setAll(row, i -> row[i].divide(divisor));
            }
        }
        return rows;
    }
}
