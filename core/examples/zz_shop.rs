//! t
#![allow(warnings, clippy::all, clippy::pedantic)]
use risewright::design::*; use risewright::parts::*; use risewright::workshop::sheets::*; use risewright::workshop::drilling::*; use risewright::quantity::*; use risewright::mechanics::*;
fn main(){ for d in Demo::ALL { let d=d.design(); println!("== {} sheet {}x{} cutting {:?}", d.name, d.shop.sheet_length.to_mm(), d.shop.sheet_width.to_mm(), d.shop.cutting);
 let list=parts(&d);
 for j in jobs(&d,&list){ println!("job t{} pieces {} area {}", j.thickness.to_mm(), j.pieces.len(), j.area()); let t=std::time::Instant::now(); let mut s=Search::new(&j); println!("first {:?} bought {}",t.elapsed(), s.best().bought(&j)); let t=std::time::Instant::now(); s.advance(1000); println!("1000 {:?} bought {}",t.elapsed(), s.best().bought(&j)); 
  for p in &j.pieces {print!("{}:{}x{} ",p.part,p.length.to_mm(),p.width.to_mm());} println!(); for s in &s.best().sheets { let q=sequence(&j,s); println!("cuts {:?} offcuts {:?}", q.as_ref().map(|q|q.cuts.len()), q.map(|q|q.offcuts.iter().map(|o|(o.length.to_mm(),o.width.to_mm())).collect::<Vec<_>>()));}}
 for b in bars(&list,d.shop.kerf){println!("bar {:?} {:?} {} cuts {:?}",b.form,b.section.map(|x|x.to_mm()),b.length.to_mm(),b.cuts.iter().map(|c|(c.0,c.1.to_mm())).collect::<Vec<_>>());}
 for t in tables(&list,Length::mm(0.3)){println!("{} {} x{} {:?} holes {} housings {} form {:?}",t.part,t.name,t.count,t.size.map(|x|x.to_mm()),t.rows.len(),t.housings.len(), list.iter().find(|p|p.number==t.part).unwrap().form); for r in &t.rows{print!("({} {:.2} {:.2} {:.2} {:?})",r.letter,r.along.to_mm(),r.across.to_mm(),r.bit.diameter.to_mm(),r.purpose);} println!(); for h in &t.housings{print!("[{} {:.2} {:.2} {:.1}x{:.1}x{:.1}]",h.takes,h.along.to_mm(),h.across.to_mm(),h.length.to_mm(),h.width.to_mm(),h.depth.to_mm());} println!();}
 let solver=Solver::new(&idealise(&d).unwrap()).unwrap(); let hs:Vec<f64>=(0..9).map(|i|d.lift.lowest.to_m()+(d.lift.highest-d.lift.lowest).to_m()*i as f64/8.0).collect();
 let t=std::time::Instant::now(); for m in Method::ALL {println!("{:?} {:?}",m,largest(&d,&solver,m,&hs));} println!("{:?}",t.elapsed());
 for p in pilots(&list){println!("pilot {:?}",p);} println!("deck {:?}", d.frames);
}}
